import Papa from 'papaparse'
import { boundGrid, GRID_LIMITS, type GridReading, type WrittenCell } from './cell'
import { neutraliseText, readNeutralised } from './text'

/** RFC 4180, in UTF-8 with the mark by which spreadsheet programs know it. */
export function writeCsv(rows: readonly (readonly WrittenCell[])[]): string {
  const cells = rows.map((row) => row.map((cell) => (typeof cell === 'string' ? neutraliseText(cell) : (cell ?? ''))))
  return `\uFEFF${Papa.unparse(cells, { newline: '\r\n' })}\r\n`
}

/** Separated by commas, semicolons or tabs, whichever the file uses. Whatever a cell says is text: nothing is evaluated. */
export function readCsv(bytes: Uint8Array): GridReading {
  if (bytes.byteLength > GRID_LIMITS.fileBytes) {
    return { ok: false, reason: `It has ${bytes.byteLength} bytes; at most ${GRID_LIMITS.fileBytes} are read.` }
  }
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return { ok: false, reason: 'It is not text in UTF-8. Save it as "CSV UTF-8".' }
  }
  if (text.includes('\0')) return { ok: false, reason: 'It is not text: it holds a zero byte.' }
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: findDelimiter(text), skipEmptyLines: false })
  const broken = errors.find(({ type }) => type === 'Quotes')
  if (broken !== undefined) {
    return { ok: false, reason: `A quotation mark is missing in row ${(broken.row ?? 0) + 1}: ${broken.message}.` }
  }
  return boundGrid({ rows: data.map((row) => row.map(readNeutralised)), refused: [] })
}

/** Whichever of comma, semicolon and tab the first line has most of, outside quotation marks. */
function findDelimiter(text: string): string {
  const line =
    text
      .replace(/^[\r\n]+/, '')
      .replaceAll(/"(?:[^"]|"")*"/g, '')
      .split(/[\r\n]/, 1)[0] ?? ''
  const count = (delimiter: string) => line.split(delimiter).length
  return [',', ';', '\t'].reduce((best, next) => (count(next) > count(best) ? next : best))
}
