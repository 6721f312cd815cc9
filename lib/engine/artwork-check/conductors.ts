import type { ArtworkFileFacts } from '@/lib/artwork'
import { DESIGN_PLACE } from '../results'
import {
  type ArtworkPair,
  type ArtworkSubject,
  type Comparison,
  filesFor,
  listNames,
  NOTHING_COMPARED,
  type OpenFact,
  unknownFiles,
} from './compared'

/** As statements about it begin. */
export const CONDUCTOR_COUNT_FACT = 'Number of conductor layers'

/** How many conductor layers there are, which numbers they have, on which sides they lie. */
export function compareConductors(subject: ArtworkSubject): Comparison {
  const { artwork, design } = subject
  const layers = design.construction.layers.filter(({ kind }) => kind === 'conductor')
  const inConstruction = {
    where: 'the construction',
    says: String(layers.length),
    path: ['construction', 'layers'],
  }
  const files = artwork.files.filter(({ role }) => role.role === 'copper')
  const stated = artwork.files.flatMap((file): ArtworkPair[] =>
    listCounts(file).map(({ where, count }) => ({
      fact: CONDUCTOR_COUNT_FACT,
      one: { where, says: String(count) },
      other: inConstruction,
      agrees: count === layers.length,
      places: [DESIGN_PLACE],
    })),
  )
  if (layers.length === 0) return NOTHING_COMPARED
  if (files.length === 0) {
    return { pairs: stated, open: [openCount('no file of the artwork is known to be copper')] }
  }
  const empty = files.filter(({ objectCount }) => objectCount === 0)
  const unknown = unknownFiles(artwork)
  // A file that nobody knows may be the layer that is missing.
  const isOpen = files.length < layers.length && unknown.length > 0
  const open: OpenFact[] = [
    ...(isOpen ? [openCount(`nobody has said what ${listNames(unknown)} is for`)] : []),
    ...empty.map(({ name }) => openCount(`${name} is to be copper and holds nothing`)),
  ]
  const counted: ArtworkPair[] = isOpen
    ? []
    : [
        {
          fact: CONDUCTOR_COUNT_FACT,
          one: { where: listNames(files), says: String(files.length) },
          other: inConstruction,
          agrees: files.length === layers.length,
          places: [DESIGN_PLACE],
        },
      ]
  return { pairs: [...counted, ...stated, ...comparePlaces(subject, layers.length)], open }
}

const openCount = (because: string): OpenFact => ({
  fact: 'the conductor layers',
  because,
  decidedBy: 'add the files of all conductor layers, and say which file is which',
  places: [DESIGN_PLACE],
})

function listCounts({ name, job, conductorCount }: ArtworkFileFacts): { where: string; count: number }[] {
  return [
    ...(job?.copperLayerCount == null ? [] : [{ where: name, count: job.copperLayerCount }]),
    ...(job?.stackCopperCount == null ? [] : [{ where: `the stack in ${name}`, count: job.stackCopperCount }]),
    ...(conductorCount === null ? [] : [{ where: name, count: conductorCount }]),
  ]
}

/** Numbers and sides that files give themselves, each against the construction and against the other files. */
function comparePlaces({ artwork, design }: ArtworkSubject, layerCount: number): ArtworkPair[] {
  const conductors = design.construction.layers.filter(({ kind }) => kind === 'conductor')
  const files = filesFor(artwork, 'copper')
  const pairs: ArtworkPair[] = []
  const byNumber = new Map<number, ArtworkFileFacts>()
  for (const file of files) {
    const { layerNumber, side } = file.role
    if (layerNumber !== null) {
      const layer = conductors[layerNumber - 1]
      pairs.push({
        fact: `Place of ${file.name}`,
        one: { where: file.name, says: `conductor layer ${layerNumber}` },
        other: { where: 'the construction', says: `${layerCount} conductor layers`, path: ['construction', 'layers'] },
        agrees: layerNumber >= 1 && layerNumber <= layerCount,
        places: layer === undefined ? [DESIGN_PLACE] : [{ kind: 'layer', id: layer.id, name: layer.name }],
      })
      const other = byNumber.get(layerNumber)
      if (other !== undefined) pairs.push(sameTwice(`conductor layer ${layerNumber}`, file, other))
      byNumber.set(layerNumber, file)
      if (side === 'top' || side === 'bottom') {
        const expected = side === 'top' ? 1 : layerCount
        pairs.push({
          fact: `Side of ${file.name}`,
          one: { where: file.name, says: `${side}, conductor layer ${layerNumber}` },
          other: {
            where: 'the construction',
            says: `conductor layer ${expected} at the ${side}`,
            path: ['construction', 'layers'],
          },
          agrees: layerNumber === expected,
          places: [DESIGN_PLACE],
        })
      }
    }
  }
  for (const side of ['top', 'bottom'] as const) {
    const [first, second] = files.filter(({ role }) => role.side === side && role.layerNumber === null)
    if (first !== undefined && second !== undefined) pairs.push(sameTwice(`copper at the ${side}`, first, second))
  }
  return pairs
}

const sameTwice = (what: string, one: ArtworkFileFacts, other: ArtworkFileFacts): ArtworkPair => ({
  fact: `Which file is ${what}`,
  one: { where: one.name, says: what },
  other: { where: other.name, says: `${what} as well` },
  agrees: false,
  places: [DESIGN_PLACE],
})

/** Which conductor layers a drill file joins. */
export function compareSpans({ artwork, design }: ArtworkSubject): Comparison {
  const count = design.construction.layers.filter(({ kind }) => kind === 'conductor').length
  const pairs = filesFor(artwork, 'holes').flatMap(({ name, role: { span } }): ArtworkPair[] => {
    if (span === null || count === 0) return []
    const [from, to] = [Math.min(...span), Math.max(...span)]
    return [
      {
        fact: `Layers that the holes of ${name} join`,
        one: { where: name, says: `${from} to ${to}` },
        other: { where: 'the construction', says: `1 to ${count}`, path: ['construction', 'layers'] },
        agrees: from >= 1 && to <= count,
        places: [DESIGN_PLACE],
      },
    ]
  })
  return { pairs, open: [] }
}
