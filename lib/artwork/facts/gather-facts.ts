import type { ExtentNm } from '../apertures/aperture'
import { buildCopperStack, type CopperStack } from '../copper/copper-stack'
import { NM_PER_MM } from '../limits'
import { FLASH, type LayerObjects, REGION } from '../objects/objects'
import type { FileReading } from '../set/read-file'
import type { ArtworkSet, SetFile } from '../set/read-set'
import { extentOfLayer } from '../shape/extents'
import { ARTWORK_READER_VERSION, type ArtworkFacts, type ArtworkFileFacts } from './artwork-facts'
import { measureCopper, netsOf } from './copper-facts'
import { measureOpenings } from './openings'
import { traceOutline } from './outline-loops'

/** Sentences about one file that are kept; the counts say how many there are. */
const MOST_ISSUES = 30
/** Past a count that no circuit has the file is a picture of something else, and areas are not worth the time. */
const MOST_PROFILE_OBJECTS = 50_000

/**
 * What a set says.
 *
 * @param hashOf  SHA-256 of a file by its name in the set
 * @param stack  what its copper covers, where somebody has it already
 */
export function gatherFacts(
  set: ArtworkSet,
  hashOf: (name: string) => string,
  stack: CopperStack = buildCopperStack(set),
): ArtworkFacts {
  const copper = measureCopper(set, stack)
  return {
    readerVersion: ARTWORK_READER_VERSION,
    files: set.files.map((file) => factsOf(file, hashOf(file.name), copper.get(file.name) ?? null)),
    refused: set.refused.map(({ name, reason }) => ({ name, reason })),
    nets: netsOf(set, stack),
  }
}

function factsOf(
  { name, bytes, reading, role }: SetFile,
  sha256: string,
  copper: ArtworkFileFacts['copper'],
): ArtworkFileFacts {
  const isLayer = reading.kind === 'gerber' || reading.kind === 'drill'
  const errors = reading.issues.filter(({ severity }) => severity === 'error')
  const notes = reading.issues.filter(({ severity }) => severity === 'note')
  const extent = isLayer ? extentOfLayer(reading.objects) : null
  return {
    name,
    sizeBytes: bytes,
    sha256,
    kind: reading.kind,
    role: { ...role, span: role.span === null ? null : [role.span[0], role.span[1]] },
    objectCount: isLayer ? reading.objects.count : null,
    extentMm: extent === null ? null : inMm(extent),
    outline:
      reading.kind === 'gerber' && role.role === 'profile' && reading.objects.count <= MOST_PROFILE_OBJECTS
        ? outlineOf(reading.objects)
        : null,
    narrowestStrokeMm: reading.kind === 'gerber' && role.role === 'copper' ? findNarrowest(reading.objects) : null,
    copper,
    openings: reading.kind === 'gerber' && role.role === 'coverlay' ? measureOpenings(reading.objects) : null,
    tools: reading.kind === 'drill' ? listTools(reading) : null,
    job: reading.kind === 'job' ? jobOf(reading) : null,
    stackGroups:
      reading.kind === 'ipc2581'
        ? reading.stackGroups.map(({ name: group, thicknessNm }) => ({
            name: group,
            thicknessMm: thicknessNm === null ? null : thicknessNm / NM_PER_MM,
          }))
        : null,
    conductorCount:
      reading.kind === 'ipc2581' && reading.layers.length > 0
        ? reading.layers.filter(({ layerFunction }) => CONDUCTOR_FUNCTIONS.has(layerFunction ?? '')).length
        : null,
    project: isLayer ? projectOf(reading.fileAttributes.get('.ProjectId')) : null,
    errorCount: errors.length,
    noteCount: notes.length,
    issues: [...errors, ...notes]
      .slice(0, MOST_ISSUES)
      .map(({ severity, line, column, reason }) => ({ severity, line, column, reason })),
    questions: isLayer ? reading.questions.map(({ text, taken }) => ({ text, taken })) : [],
    unreadReason: reading.kind === 'other' ? reading.reason : null,
  }
}

/** Functions of layers that conduct (IPC-2581, layerFunctionType; from memory). */
const CONDUCTOR_FUNCTIONS: ReadonlySet<string> = new Set([
  'CONDUCTOR',
  'SIGNAL',
  'PLANE',
  'MIXED',
  'CONDFILM',
  'CONDFOIL',
])

const inMm = (extent: ExtentNm): [number, number, number, number] => [
  extent[0] / NM_PER_MM,
  extent[1] / NM_PER_MM,
  extent[2] / NM_PER_MM,
  extent[3] / NM_PER_MM,
]

function outlineOf(objects: LayerObjects): ArtworkFileFacts['outline'] {
  const traced = traceOutline(objects)
  if (traced === null) return null
  return {
    isClosed: traced.isClosed,
    extentMm: [...traced.extentMm],
    loops: traced.loops.map(({ areaMm2, extentMm, depth }) => ({ areaMm2, extentMm: [...extentMm], depth })),
    looseEndsMm: traced.looseEndsMm.map(([x, y]) => [x, y]),
  }
}

function findNarrowest(objects: LayerObjects): number | null {
  let narrowestNm = Infinity
  for (let index = 0; index < objects.count; index += 1) {
    const kind = objects.kinds[index]
    if (objects.isClear[index] === 1 || kind === FLASH || kind === REGION) continue
    const diameterNm = objects.apertures[objects.apertureAt[index] ?? -1]?.diameterNm ?? null
    // A stroke of no width draws nothing.
    if (diameterNm !== null && diameterNm > 0 && diameterNm < narrowestNm) narrowestNm = diameterNm
  }
  return narrowestNm === Infinity ? null : narrowestNm / NM_PER_MM
}

function listTools(reading: Extract<FileReading, { kind: 'drill' }>): ArtworkFileFacts['tools'] {
  return reading.tools
    .filter(({ hits, slots, routedMoves }) => hits + slots + routedMoves > 0)
    .map(({ number, diameterNm, plating, hits, slots, routedMoves }) => ({
      number,
      diameterMm: diameterNm / NM_PER_MM,
      plating,
      hits,
      slots,
      routedMoves,
    }))
}

/** Materials of a job file's list that are no part of the thickness of what is handed over. */
const NO_BODY = /^(legend|paste|solderpaste)$/i

function jobOf(job: Extract<FileReading, { kind: 'job' }>): ArtworkFileFacts['job'] {
  const bodies = job.layers.filter(({ type }) => !NO_BODY.test(type))
  const isWhole = bodies.length > 0 && bodies.every(({ thicknessMm }) => thicknessMm !== null)
  return {
    name: job.name,
    revision: job.revision,
    sizeMm: job.sizeMm === null ? null : [job.sizeMm[0], job.sizeMm[1]],
    copperLayerCount: job.copperLayerCount,
    thicknessMm: job.thicknessMm,
    stackThicknessMm: isWhole ? bodies.reduce((sum, { thicknessMm }) => sum + (thicknessMm ?? 0), 0) : null,
    stackCopperCount: bodies.length === 0 ? null : bodies.filter(({ type }) => /^copper$/i.test(type)).length,
  }
}

/** `.ProjectId` (Gerber Layer Format Specification, from memory): the project's name, a mark that is its own, and its revision. */
function projectOf(value: string | undefined): ArtworkFileFacts['project'] {
  if (value === undefined) return null
  const [name = '', mark = '', revision = ''] = value.split(',').map((part) => part.trim())
  if (name === '') return null
  return { name, mark: mark === '' ? null : mark, revision: revision === '' ? null : revision }
}
