import { compareRows } from '../sheets/compare'
import type { FabricationTable } from './columns'
import { writeTexts } from './read-table'

/** How two versions of a sheet differ, each row as the texts of its cells. */
export interface TableChanges {
  /** Headings of the sheet, for the rows below. */
  readonly columns: readonly string[]
  readonly added: readonly (readonly string[])[]
  readonly changed: readonly { readonly before: readonly string[]; readonly after: readonly string[] }[]
  readonly removed: readonly (readonly string[])[]
  readonly unchangedCount: number
}

export function listTableChanges<R>(
  table: FabricationTable<R>,
  before: readonly R[],
  after: readonly R[],
): TableChanges {
  const changes = compareRows(before, after, table.keyOf)
  const texts = (row: R | undefined) => (row === undefined ? [] : writeTexts(table, row))
  return {
    columns: table.columns.map(({ title }) => title),
    added: changes.added.map((index) => texts(after[index])),
    changed: changes.changed.map(([from, to]) => ({ before: texts(before[from]), after: texts(after[to]) })),
    removed: changes.removed.map((index) => texts(before[index])),
    unchangedCount: changes.unchanged,
  }
}
