import type { FlexTestRow } from '@/lib/engine/flex-tests'
import type { MatrixRow } from '../matrix'
import type { ShelfRow } from '../shelf'
import type { FabricationTable } from './columns'
import { FLEX_TEST_TABLE } from './flex-test-table'
import { MATRIX_TABLE } from './matrix-table'
import { SHELF_TABLE } from './shelf-table'

export type { FabricationTable, TableColumn } from './columns'
export { FLEX_TEST_TABLE } from './flex-test-table'
export { MATRIX_TABLE } from './matrix-table'
export * from './read-table'
export { SHELF_TABLE } from './shelf-table'
export { listTableChanges, type TableChanges } from './table-changes'

/** Sheets that are lists of rows, and so can be a grid and a file. */
export const TABLE_SHEET_KINDS = ['matrix', 'shelf', 'flex-tests'] as const
export type TableSheetKind = (typeof TABLE_SHEET_KINDS)[number]
export const SHEET_TABLES = {
  matrix: MATRIX_TABLE,
  shelf: SHELF_TABLE,
  'flex-tests': FLEX_TEST_TABLE,
} as const satisfies Record<TableSheetKind, unknown>

export function isTableSheetKind(kind: string): kind is TableSheetKind {
  return Object.hasOwn(SHEET_TABLES, kind)
}

export type SheetRow = MatrixRow | ShelfRow | FlexTestRow

/** All kinds of rows go through the same code; each by its own table. */
export const tableOf = (kind: TableSheetKind) => SHEET_TABLES[kind] as unknown as FabricationTable<SheetRow>
