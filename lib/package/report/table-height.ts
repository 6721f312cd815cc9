import type { ContentTable } from 'pdfmake/interfaces'
import { TEXT_WIDTH_PT } from './style'

/** Of the family's letters, in relation to the size of its type: measured on lines of a report. */
const LETTER_WIDTH = 0.46
const LINE_HEIGHT = 1.43
/** Above and below the text of a row where rows are set close, with the line between them. */
const ROW_PADDING_PT = 3
const GAP_PT = 6
/** A heading in the table's first row, with the room above it. */
const HEADING_PT = 30
/** As wide as a column is where nobody said how wide. */
const AUTO_WIDTH_PT = 80

/**
 * About how high some tables of plain texts become that are set close: a little too high rather than too low, to choose how much of each text to show.
 *
 * @param fontSizePt  of their rows
 */
export function estimateTablesHeight(tables: readonly ContentTable[], fontSizePt: number): number {
  return tables.reduce((sum, { table }) => {
    const widths = resolveWidths(Array.isArray(table.widths) ? table.widths : [])
    return table.body.reduce((height, row) => height + estimateRow(row, widths, fontSizePt), sum + GAP_PT)
  }, 0)
}

function resolveWidths(widths: readonly unknown[]): number[] {
  const fixed = widths.map((width) => (typeof width === 'number' ? width : width === 'auto' ? AUTO_WIDTH_PT : null))
  const taken = fixed.reduce<number>((sum, width) => sum + (width ?? 0) + 8, 0)
  const open = fixed.filter((width) => width === null).length
  return fixed.map((width) => width ?? (TEXT_WIDTH_PT - taken) / open)
}

function estimateRow(row: readonly unknown[], widths: readonly number[], fontSizePt: number): number {
  const lines = row.map((cell, index) => {
    const perLine = (widths[index] ?? TEXT_WIDTH_PT) / (LETTER_WIDTH * fontSizePt)
    return Math.ceil(lengthOf(cell) / perLine)
  })
  if (row.some((cell) => typeof cell === 'object' && cell !== null && 'colSpan' in cell)) return HEADING_PT
  return Math.max(1, ...lines) * fontSizePt * LINE_HEIGHT + ROW_PADDING_PT
}

function lengthOf(cell: unknown): number {
  if (typeof cell === 'string') return cell.length
  const text = typeof cell === 'object' && cell !== null ? (cell as { text?: unknown }).text : null
  return typeof text === 'string' ? text.length : 0
}
