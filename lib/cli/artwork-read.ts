import path from 'node:path'
import { parseArgs } from 'node:util'
import { extentOfLayer, MOST_FILE_BYTES, readSet, type SetFile, shapeOfLayer } from '@/lib/artwork'
import { readInputFile, UnusableInput } from './input-file'
import { formatTable, wrapText } from './text-table'

const USAGE = `Reads files of circuit data (Gerber, drill, job file, IPC-D-356, IPC-2581, or ZIP archives of them) as one set and prints what was read:
roles of the files with their reason, objects, areas and extents, what was not understood, and what has to be answered.

  npm run artwork:read -- files… [--no-areas]

Exit status: 0 all was read, 1 something was left out or is not known, 2 a file could not be opened.`

/** To a micrometre, or a thousandth of a square millimetre. */
const round = (value: number): number => Math.round(value * 1e3) / 1e3
const inMm = (valueNm: number): string => String(round(valueNm / 1e6))

/** One row of the table of roles. */
function rowOf({ name, reading, role }: SetFile, hasAreas: boolean): string[] {
  const place = [role.role ?? '?', role.side, role.layerNumber === null ? null : `layer ${role.layerNumber}`]
  if (role.span !== null) place.push(`layers ${role.span[0]} to ${role.span[1]}`)
  const what = place.filter((part) => part !== null).join(', ')
  if (reading.kind !== 'gerber' && reading.kind !== 'drill') return [name, reading.kind, '', '', '', '']
  const extent = extentOfLayer(reading.objects)
  const size = extent === null ? 'empty' : extent.map((value) => inMm(value)).join(', ')
  const area = hasAreas && reading.kind === 'gerber' ? String(round(shapeOfLayer(reading.objects).areaMm2)) : ''
  return [name, reading.kind, what, String(reading.objects.count), area, size]
}

/** What a table cannot hold: a sentence each. */
function remarksOf({ name, reading, role }: SetFile): string[] {
  const remarks = [`${name}: ${role.reason}`]
  if (reading.kind === 'other') return [`${name}: not read: ${reading.reason}`]
  if (reading.kind === 'job')
    remarks[0] = `${name}: ${reading.name ?? 'no name'}, ${reading.copperLayerCount ?? '?'} copper layers, thickness ${reading.thicknessMm ?? '?'} mm, ${reading.layers.length} layers in the stack, ${reading.files.length} files named`
  if (reading.kind === 'netlist')
    remarks[0] = `${name}: ${reading.nets.length} nets, ${reading.points.length} test points, ${reading.conductors.length} conductors`
  if (reading.kind === 'ipc2581')
    remarks[0] = `${name}: revision ${reading.revision ?? '?'}, ${reading.layers.length} layers, ${reading.stackGroups.length} stack groups, ${reading.outline.length} outlines, ${reading.zones.length} zones, ${reading.bendAreas.length} bend areas`
  if (reading.kind === 'drill') {
    remarks.push(...reading.decisions.map((decision) => `${name}: ${decision}`))
    for (const { number, diameterNm, hits, slots, routedMoves, plating, platingFrom } of reading.tools) {
      const says = plating === null ? 'plating not said' : `${plating} by ${platingFrom}`
      remarks.push(
        `${name}: T${Math.abs(number)} ${inMm(diameterNm)} mm: ${hits} holes, ${slots} slots, ${routedMoves} routed moves; ${says}`,
      )
    }
  }
  if (reading.kind === 'gerber' || reading.kind === 'drill')
    for (const { text, taken } of reading.questions)
      remarks.push(`${name}: question: ${text}${taken === null ? '' : ` Taken: ${taken}.`}`)
  for (const { severity, line, column, reason } of reading.issues)
    remarks.push(`${name}:${line}:${column}: ${severity}: ${reason}`)
  return remarks
}

function print(paths: readonly string[], hasAreas: boolean): number {
  const given = paths.map((file) => {
    const bytes = readInputFile(file, {
      kind: 'a file',
      maxBytes: MOST_FILE_BYTES,
      atMost: `at most ${MOST_FILE_BYTES} are read`,
    })
    return { name: path.basename(file), bytes }
  })
  const { files, refused } = readSet(given)
  const columns = [
    { title: 'File', align: 'left' },
    { title: 'Kind', align: 'left' },
    { title: 'Role', align: 'left' },
    { title: 'Objects', align: 'right' },
    { title: 'Area mm²', align: 'right' },
    { title: 'Extent mm (from x, y to x, y)', align: 'left' },
  ] as const
  console.log(
    formatTable(
      columns,
      files.map((file) => rowOf(file, hasAreas)),
    ).join('\n'),
  )
  console.log()
  for (const remark of files.flatMap(remarksOf)) console.log(wrapText(remark, 160, '  ').join('\n'))
  for (const { name, reason } of refused) console.log(`${name}: refused: ${reason}`)
  const isWhole = files.every(({ reading }) => reading.issues.every(({ severity }) => severity !== 'error'))
  const isKnown = files.every(
    ({ reading, role }) =>
      (reading.kind !== 'gerber' && reading.kind !== 'drill') || (role.role !== null && reading.questions.length === 0),
  )
  return isWhole && isKnown && refused.length === 0 ? 0 : 1
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { help: { type: 'boolean', short: 'h' }, 'no-areas': { type: 'boolean' } },
})
if (values.help === true || positionals.length === 0) {
  console.log(USAGE)
  process.exit(values.help === true ? 0 : 2)
}
try {
  process.exit(print(positionals, values['no-areas'] !== true))
} catch (error) {
  if (!(error instanceof UnusableInput)) throw error
  console.error(error.message)
  process.exit(2)
}
