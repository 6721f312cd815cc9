import { FLEX_TEST_TABLE } from './flex-test-table'
import { MATRIX_TABLE } from './matrix-table'
import { SHELF_TABLE } from './shelf-table'

export type { FabricationTable, TableColumn } from './columns'
export { FLEX_TEST_TABLE } from './flex-test-table'
export { MATRIX_TABLE } from './matrix-table'
export * from './read-table'
export { SHELF_TABLE } from './shelf-table'

/** Sheets that are lists of rows, and so can be a grid and a file. */
export const SHEET_TABLES = { matrix: MATRIX_TABLE, shelf: SHELF_TABLE, 'flex-tests': FLEX_TEST_TABLE } as const
export type TableSheetKind = keyof typeof SHEET_TABLES
