'use client'

import { useCallback, useEffect, useMemo, useState } from 'react'
import { type FabricationTable, writeTexts } from '@/lib/fabrication'
import { makeGridReader } from './grid-faults'
import { countUnsaved, type GridState, makeGrid } from './grid-state'

/** A sheet's rows as a grid that is being edited: what it holds, what is wrong in it, and how much of it is not saved. */
export function useSheetGrid<R>(
  table: FabricationTable<R>,
  rows: readonly R[],
  mayEdit: boolean,
  otherUnsavedCount = 0,
) {
  const readGrid = useMemo(() => makeGridReader(table), [table])
  const [state, setState] = useState<GridState>(() =>
    makeGrid(
      table.columns.length,
      rows.map((row) => writeTexts(table, row)),
    ),
  )
  const reading = useMemo(() => readGrid(state.rows), [readGrid, state.rows])
  const unsavedCount = useMemo(() => countUnsaved(state), [state]) + otherUnsavedCount
  const onChange = useCallback((next: (now: GridState) => GridState) => setState(next), [])
  useWarningBeforeLeaving(mayEdit && unsavedCount > 0)
  return { state, onChange, reading, unsavedCount }
}

/** The browser asks before what was typed is lost. */
function useWarningBeforeLeaving(isNeeded: boolean): void {
  useEffect(() => {
    if (!isNeeded) return
    const ask = (event: BeforeUnloadEvent) => event.preventDefault()
    window.addEventListener('beforeunload', ask)
    return () => window.removeEventListener('beforeunload', ask)
  }, [isNeeded])
}
