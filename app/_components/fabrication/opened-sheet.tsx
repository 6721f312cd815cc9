'use client'

import { type FabricationTable, SHEET_TABLES } from '@/lib/fabrication'
import { FabricationGrid } from './grid/fabrication-grid'
import type { EditedSheet, Row } from './grid/sheet-editor'
import { useSheetGrid } from './grid/use-sheet-grid'

/** A version of a sheet to be read and copied from. */
export function OpenedSheet({ label, sheet: { kind, content } }: { label: string; sheet: EditedSheet }) {
  const table = SHEET_TABLES[kind] as unknown as FabricationTable<Row>
  const { state, onChange, reading } = useSheetGrid(table, content.rows as readonly Row[], false)
  return (
    <FabricationGrid label={label} table={table} state={state} onChange={onChange} faults={reading.faults} isReadOnly />
  )
}
