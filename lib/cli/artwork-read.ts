import path from 'node:path'
import { parseArgs } from 'node:util'
import { extentOfLayer, readGerber, shapeOfLayer } from '@/lib/artwork'
import { readInputFile, UnusableInput } from './input-file'
import { formatTable } from './text-table'

const USAGE = `Reads files of circuit data and prints what is in them.

  npm run artwork:read -- files…

Exit status: 0 all was read, 1 something was left out or is not known, 2 a file could not be opened.`

function print(files: readonly string[]): number {
  const rows: string[][] = []
  const remarks: string[] = []
  for (const file of files) {
    const bytes = readInputFile(file, {
      kind: 'a file',
      maxBytes: 256 * 1024 * 1024,
      atMost: 'at most 256 MB are read',
    })
    const reading = readGerber(bytes)
    const extent = extentOfLayer(reading.objects)
    const { areaMm2 } = shapeOfLayer(reading.objects)
    const size = extent === null ? 'empty' : extent.map((value) => (value / 1e6).toFixed(3)).join(', ')
    rows.push([
      path.basename(file),
      reading.unit ?? 'not stated',
      String(reading.objects.count),
      areaMm2.toFixed(3),
      size,
    ])
    for (const { severity, line, column, reason } of reading.issues)
      remarks.push(`${file}:${line}:${column}: ${severity}: ${reason}`)
  }
  const columns = [
    { title: 'File', align: 'left' },
    { title: 'Unit', align: 'left' },
    { title: 'Objects', align: 'right' },
    { title: 'Area mm²', align: 'right' },
    { title: 'Extent mm', align: 'left' },
  ] as const
  console.log(formatTable(columns, rows).join('\n'))
  for (const remark of remarks) console.log(remark)
  return remarks.some((remark) => remark.includes(': error: ')) ? 1 : 0
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { help: { type: 'boolean', short: 'h' } },
})
if (values.help === true || positionals.length === 0) {
  console.log(USAGE)
  process.exit(values.help === true ? 0 : 2)
}
try {
  process.exit(print(positionals))
} catch (error) {
  if (!(error instanceof UnusableInput)) throw error
  console.error(error.message)
  process.exit(2)
}
