'use client'

import { type SheetRow, tableOf } from '@/lib/fabrication'
import { FabricationGrid } from './grid/fabrication-grid'
import type { EditedSheet } from './grid/sheet-editor'
import { useSheetGrid } from './grid/use-sheet-grid'

/** A version of a sheet to be read and copied from. */
export function OpenedSheet({ label, sheet: { kind, content } }: { label: string; sheet: EditedSheet }) {
  const table = tableOf(kind)
  const { state, onChange, reading } = useSheetGrid(table, content.rows as readonly SheetRow[], false)
  return (
    <FabricationGrid label={label} table={table} state={state} onChange={onChange} faults={reading.faults} isReadOnly />
  )
}
