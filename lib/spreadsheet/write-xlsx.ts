import writeXlsxFile from 'write-excel-file/universal'
import type { WrittenCell } from './cell'
import { neutraliseText } from './text'

/** A workbook with one worksheet, its first row set off as a heading. Text is neutralised; no cell is a formula. */
export async function writeXlsx(
  sheetName: string,
  rows: readonly (readonly WrittenCell[])[],
): Promise<Uint8Array<ArrayBuffer>> {
  const [heading, ...body] = rows
  const widths = (heading ?? []).map((_, column) => ({
    width: Math.min(60, Math.max(8, ...rows.slice(0, 200).map((row) => String(row[column] ?? '').length + 2))),
  }))
  const data = [
    (heading ?? []).map((cell) => (cell === null ? null : { ...writeCell(cell), fontWeight: 'bold' as const })),
    ...body.map((row) => row.map((cell) => (cell === null || cell === '' ? null : writeCell(cell)))),
  ]
  const blob = await writeXlsxFile(data, { sheet: sheetName, columns: widths, stickyRowsCount: 1 }).toBlob()
  return new Uint8Array(await blob.arrayBuffer())
}

function writeCell(cell: string | number) {
  return typeof cell === 'number' ? { type: Number, value: cell } : { type: String, value: neutraliseText(cell) }
}
