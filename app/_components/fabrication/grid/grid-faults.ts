import { type BadCell, type FabricationTable, type RowReading, readTableRow } from '@/lib/fabrication/table'
import type { GridRow } from './grid-state'

/** What is wrong in a grid, by row and column, and the rows that are well. */
export interface GridReading<R> {
  /** Faults of each row that has any, by the row's id. */
  readonly faults: ReadonlyMap<number, readonly BadCell[]>
  readonly rows: readonly R[]
  readonly filledCount: number
}

/** Rows that did not change are not read again: their texts are the same array. */
export function makeGridReader<R>(table: FabricationTable<R>) {
  const known = new WeakMap<readonly string[], RowReading<R> | null>()
  const read = (texts: readonly string[]): RowReading<R> | null => {
    const earlier = known.get(texts)
    if (earlier !== undefined) return earlier
    const reading = texts.every((text) => text.trim() === '') ? null : readTableRow(table, texts, 0)
    known.set(texts, reading)
    return reading
  }
  return (rows: readonly GridRow[]): GridReading<R> => {
    const faults = new Map<number, readonly BadCell[]>()
    const good: { readonly id: number; readonly row: R; readonly texts: readonly string[]; readonly line: number }[] =
      []
    let filledCount = 0
    rows.forEach(({ id, texts }, index) => {
      const reading = read(texts)
      if (reading === null) return
      filledCount += 1
      if (reading.ok) good.push({ id, row: reading.row, texts, line: index + 1 })
      else faults.set(id, reading.bad)
    })
    const across = table.findProblemsAcross(good.map(({ row }) => row))
    for (const { row: at, field, message } of across) {
      const found = good[at]
      if (found === undefined) continue
      const columnIndex = Math.max(
        0,
        table.columns.findIndex(({ key }) => key === field),
      )
      const column = table.columns[columnIndex]?.title ?? ''
      const fault = { line: found.line, column, columnIndex, text: found.texts[columnIndex] ?? '', reason: message }
      faults.set(found.id, [...(faults.get(found.id) ?? []), fault])
    }
    return { faults, rows: good.map(({ row }) => row), filledCount }
  }
}
