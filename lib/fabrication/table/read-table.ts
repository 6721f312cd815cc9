import type { LengthUnit } from '@/lib/engine/units'
import { type FabricationTable, headColumn, readHead, type TableCell } from './columns'

/** A cell, or a row, that cannot be taken. */
export interface BadCell {
  /** Line of the file or the grid, counted from 1, headings included where the file has them. */
  readonly line: number
  /** Title of the column. */
  readonly column: string
  readonly columnIndex: number
  readonly text: string
  readonly reason: string
}

export type RowReading<R> =
  | { readonly ok: true; readonly row: R }
  | { readonly ok: false; readonly bad: readonly BadCell[] }

const EMPTY = { ok: false, reason: 'is empty' } as const

/** One row from the texts of its cells, in the order of the table's columns. */
export function readTableRow<R>(
  table: FabricationTable<R>,
  texts: readonly string[],
  line: number,
  stated: readonly (LengthUnit | undefined)[] = [],
): RowReading<R> {
  const fields: Record<string, unknown> = {}
  const bad: BadCell[] = []
  const name = (columnIndex: number, reason: string) => {
    const column = table.columns[columnIndex]
    bad.push({ line, column: column?.title ?? '', columnIndex, text: texts[columnIndex] ?? '', reason })
  }
  table.columns.forEach((column, index) => {
    const text = texts[index] ?? ''
    const reading = column.isRequired && text.trim() === '' ? EMPTY : column.read(text, stated[index])
    if (reading.ok) fields[column.key] = reading.value
    else name(index, reading.reason)
  })
  if (bad.length > 0) return { ok: false, bad }
  const made = table.readRow(fields)
  if (made.ok) return made
  for (const { field, message } of made.problems) name(findColumn(table, field), message)
  return { ok: false, bad }
}

const findColumn = <R>(table: FabricationTable<R>, field: string) =>
  Math.max(
    0,
    table.columns.findIndex(({ key }) => key === field),
  )

export interface TableReading<R> {
  readonly rows: readonly { readonly row: R; readonly line: number }[]
  /** Every bad cell of every bad row, in order. */
  readonly bad: readonly BadCell[]
  /** Rows that hold anything, headings aside. */
  readonly rowCount: number
}

/** Rows of a grid, each with its own line; empty lines are passed over. */
export function readTableRows<R>(
  table: FabricationTable<R>,
  lines: readonly { readonly line: number; readonly texts: readonly string[] }[],
  /** Units of length that the headings state, by column. */
  stated: readonly (LengthUnit | undefined)[] = [],
): TableReading<R> {
  const filled = lines.filter(({ texts }) => texts.some((text) => text.trim() !== ''))
  const rows: { row: R; line: number; texts: readonly string[] }[] = []
  const bad: BadCell[] = []
  for (const { line, texts } of filled) {
    const reading = readTableRow(table, texts, line, stated)
    if (reading.ok) rows.push({ row: reading.row, line, texts })
    else bad.push(...reading.bad)
  }
  const across = table.findProblemsAcross(rows.map(({ row }) => row))
  for (const { row, field, message } of across) {
    const at = rows[row]
    const columnIndex = findColumn(table, field)
    const column = table.columns[columnIndex]?.title ?? ''
    if (at !== undefined)
      bad.push({ line: at.line, column, columnIndex, text: at.texts[columnIndex] ?? '', reason: message })
  }
  const badLines = new Set(bad.map(({ line }) => line))
  return {
    rows: rows.flatMap(({ row, line }) => (badLines.has(line) ? [] : [{ row, line }])),
    bad: bad.sort((a, b) => a.line - b.line || a.columnIndex - b.columnIndex),
    rowCount: filled.length,
  }
}

export type FileReading<R> =
  | ({ readonly ok: true; readonly unknownColumns: readonly string[] } & TableReading<R>)
  | { readonly ok: false; readonly reason: string }

interface FileGrid {
  readonly rows: readonly (readonly string[])[]
  readonly refused: readonly { readonly row: number; readonly column: number; readonly reason: string }[]
}

/** Rows in which headings are looked for: sheets begin with a title, a date, an address. */
const MOST_ROWS_ABOVE = 30

/** The first row that has every required heading; -1 for none. */
export function findHeadingRow<R>(table: FabricationTable<R>, rows: FileGrid['rows']): number {
  const required = table.columns.filter(({ isRequired }) => isRequired)
  return rows
    .slice(0, MOST_ROWS_ABOVE)
    .findIndex((row) => required.every((column) => row.some((text) => readHead(column, text) !== undefined)))
}

/**
 * A file's grid, headings in the first row that has all that are required, in any order of columns; what stands above is passed over. A cell that the file's reader refused, such as
 * a formula, makes its row a bad one.
 */
export function readTableFile<R>(table: FabricationTable<R>, grid: FileGrid): FileReading<R> {
  const found = findHeadingRow(table, grid.rows)
  const headingAt = found === -1 ? grid.rows.findIndex((row) => row.some((text) => text.trim() !== '')) : found
  const heading = grid.rows[headingAt]
  if (heading === undefined) return { ok: false, reason: 'It is empty.' }
  const places = table.columns.map((column) => heading.findIndex((text) => readHead(column, text) !== undefined))
  const stated = table.columns.map(
    (column, index) => readHead(column, heading[places[index] ?? -1] ?? '')?.stated ?? undefined,
  )
  const missing = table.columns.filter((column, index) => column.isRequired && places[index] === -1)
  if (missing.length > 0) {
    const titles = missing.map(({ title }) => `"${title}"`).join(', ')
    return { ok: false, reason: `Its first row has no heading ${titles}. Export the sheet once to see the headings.` }
  }
  const lines = grid.rows
    .map((row, index) => ({ line: index + 1, texts: places.map((at) => (at === -1 ? '' : (row[at] ?? ''))) }))
    .slice(headingAt + 1)
  const refused = grid.refused.flatMap(({ row, column, reason }): BadCell[] => {
    const columnIndex = places.indexOf(column - 1)
    const title = table.columns[columnIndex]?.title ?? heading[column - 1] ?? ''
    return row > headingAt + 1 && columnIndex !== -1
      ? [{ line: row, column: title, columnIndex, text: '', reason }]
      : []
  })
  const refusedLines = new Set(refused.map(({ line }) => line))
  const reading = readTableRows(
    table,
    lines.filter(({ line }) => !refusedLines.has(line)),
    stated,
  )
  const known = new Set(places)
  return {
    ok: true,
    rows: reading.rows,
    bad: [...reading.bad, ...refused].sort((a, b) => a.line - b.line || a.columnIndex - b.columnIndex),
    rowCount: reading.rowCount + refusedLines.size,
    unknownColumns: heading.filter((text, index) => text.trim() !== '' && !known.has(index)),
  }
}

/**
 * The sheet as a grid with its headings, each with its unit.
 *
 * @param chosen  unit of length that the reader chose; without it lengths are in the sheet's own
 */
export function writeTable<R>(table: FabricationTable<R>, rows: readonly R[], chosen?: LengthUnit): TableCell[][] {
  return [
    table.columns.map((column) => headColumn(column, chosen)),
    ...rows.map((row) => table.columns.map((column) => column.write(row, chosen))),
  ]
}

/** The texts that a row shows in its cells. */
export function writeTexts<R>(table: FabricationTable<R>, row: R): string[] {
  return table.columns.map((column) => {
    const cell = column.write(row)
    return cell === null ? '' : String(cell)
  })
}
