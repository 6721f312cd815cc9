import writeXlsxFile from 'write-excel-file/universal'
import type { WrittenCell } from './cell'
import { neutraliseText } from './text'

interface WrittenSheet {
  readonly name: string
  readonly rows: readonly (readonly WrittenCell[])[]
}

/** As long as spreadsheet programs take a name, and without the characters that none may have. */
const NAME_CHARACTERS = 31
const NOT_IN_NAMES = /[\\/?*[\]:]/g

/** A workbook with one worksheet, its first row set off as a heading. Text is neutralised; no cell is a formula. */
export function writeXlsx(
  sheetName: string,
  rows: readonly (readonly WrittenCell[])[],
): Promise<Uint8Array<ArrayBuffer>> {
  return writeWorkbook([{ name: sheetName, rows }])
}

/** The same with several worksheets, in their order. */
export async function writeWorkbook(sheets: readonly WrittenSheet[]): Promise<Uint8Array<ArrayBuffer>> {
  const blob = await writeXlsxFile(sheets.map(layOutSheet)).toBlob()
  return new Uint8Array(await blob.arrayBuffer())
}

function layOutSheet({ name, rows }: WrittenSheet) {
  const [heading, ...body] = rows
  const columnCount = Math.max(0, ...rows.map((row) => row.length))
  const columns = Array.from({ length: columnCount }, (_, column) => ({
    width: Math.min(60, Math.max(8, ...rows.slice(0, 200).map((row) => String(row[column] ?? '').length + 2))),
  }))
  const data = [
    (heading ?? []).map((cell) => (cell === null ? null : { ...writeCell(cell), fontWeight: 'bold' as const })),
    ...body.map((row) => row.map((cell) => (cell === null || cell === '' ? null : writeCell(cell)))),
  ]
  const sheet = name.replaceAll(NOT_IN_NAMES, ' ').slice(0, NAME_CHARACTERS)
  return { data, sheet, columns, stickyRowsCount: 1 }
}

function writeCell(cell: string | number) {
  return typeof cell === 'number' ? { type: Number, value: cell } : { type: String, value: neutraliseText(cell) }
}
