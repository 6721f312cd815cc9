import { useEffect, useMemo, useRef, useState } from 'react'
import { makeGridReader } from '@/app/_components/fabrication/grid/grid-faults'
import type { GridState } from '@/app/_components/fabrication/grid/grid-state'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { type Design, type Issue, withTakenMaterials } from '@/lib/engine'
import { getShownUnit } from '@/lib/engine/units'
import type { BadCell } from '@/lib/fabrication/table'
import { applyLayerSheet, type LayerRow } from '@/lib/layer-sheet'
import { useDraft, useEdit } from '../draft'
import { listFilledRows, type OpenSheet, openSheet, takeTable } from './layer-sheet-state'
import { SHEET_MISREAD } from './sheet-misread'

/**
 * The layers of the draft as a sheet. Each change goes into the draft as soon as every cell can be read; until then the draft stays as it
 * was, and the texts stay in the sheet.
 */
export function useLayerSheet() {
  const { state: draft, dispatch, live, stored: page } = useDraft()
  const offered = page.ownMaterials
  const edit = useEdit()
  const { unit: chosen } = useLengthUnit()
  const unit = getShownUnit('um', chosen)
  const [sheet, setSheet] = useState(() => openSheet({ design: draft.design, stored: draft.stored, offered }, unit))
  const [notes, setNotes] = useState<readonly string[]>([])
  const [refusals, setRefusals] = useState<readonly string[]>([])
  const latest = useRef({ sheet, design: draft.design })
  latest.current = { sheet, design: draft.design }
  const steps = useRef(0)
  const readGrid = useMemo(() => makeGridReader<LayerRow>(sheet.table), [sheet.table])
  const reading = useMemo(() => readGrid(sheet.grid.rows), [readGrid, sheet.grid.rows])
  const faultCount = reading.faults.size

  useEffect(() => {
    const reason =
      faultCount === 0
        ? null
        : `The layer sheet has ${faultCount === 1 ? '1 row' : `${faultCount} rows`} that cannot be read`
    dispatch({ type: 'misread', key: SHEET_MISREAD, reason })
  }, [dispatch, faultCount])
  useEffect(() => () => dispatch({ type: 'misread', key: SHEET_MISREAD, reason: null }), [dispatch])

  const { design, stored, epoch } = draft
  const seen = useRef({ epoch, stored })
  useEffect(() => {
    const { sheet: now } = latest.current
    const isReplaced = seen.current.epoch !== epoch
    const isSaved = seen.current.stored !== stored
    seen.current = { epoch, stored }
    const isBehind = now.construction !== design.construction
    // While a cell cannot be read its text stays, unless the draft as a whole was replaced, as by undo.
    if (isReplaced ? isBehind || faultCount > 0 : faultCount === 0 && (isBehind || isSaved || now.unit !== unit))
      setSheet(openSheet({ design, stored, offered }, unit, now.grid))
  }, [design, stored, offered, unit, epoch, faultCount])

  /** Puts the sheet into the draft, if every cell can be read. */
  const apply = (next: OpenSheet) => {
    const { design: present } = latest.current
    const read = makeGridReader<LayerRow>(next.table)(next.grid.rows)
    if (read.faults.size > 0) {
      setSheet(next)
      return
    }
    const filled = listFilledRows(next.grid)
    const entries = filled.flatMap(({ id, texts }, index) => {
      const row = read.rows[index]
      return row === undefined ? [] : [{ layerId: next.layerIds.get(id) ?? null, texts, row }]
    })
    const made = withTakenMaterials(applyLayerSheet(present, next.table, next.zones, entries), offered)
    steps.current += 1
    edit(`layer-sheet-${steps.current}`, () => made)
    const { layers, zones } = made.construction
    setSheet({
      ...next,
      layerIds: new Map(filled.map(({ id }, index) => [id, layers[index]?.id ?? ''])),
      zones: zones.map(({ id, name }) => ({ id, name, facts: null })),
      construction: made.construction,
    })
  }

  const onChange = (change: (now: GridState) => GridState) => {
    const { sheet: now } = latest.current
    const grid = change(now.grid)
    if (grid.rows === now.grid.rows) setSheet({ ...now, grid })
    else apply({ ...now, grid })
  }

  const onTable = (block: readonly (readonly string[])[]): boolean => {
    const { sheet: now, design: present } = latest.current
    const taken = takeTable({ design: present, offered }, block, now)
    if (taken === null) return false
    setNotes(taken.ok ? taken.notes : [])
    setRefusals(taken.ok ? [] : taken.reasons)
    if (taken.ok) apply(taken.sheet)
    return true
  }

  /** Gives up what cannot be read: back to what the draft holds. */
  const discard = () => setSheet(openSheet({ design, stored, offered }, unit))

  const faults = useMemo(
    () => (faultCount > 0 ? reading.faults : placeIssues(sheet, live.issues, design)),
    [faultCount, reading.faults, sheet, live.issues, design],
  )
  return { sheet, faults, faultCount, notes, refusals, onChange, onTable, setRefusals, discard }
}

/** Issues of the design at the cells that they are about. */
function placeIssues(
  sheet: OpenSheet,
  issues: readonly Issue[],
  design: Design,
): ReadonlyMap<number, readonly BadCell[]> {
  const placed = new Map<number, BadCell[]>()
  const rows = listFilledRows(sheet.grid)
  for (const { path, message } of issues) {
    const [root, list, index, field] = path
    if (root !== 'construction' || list !== 'layers' || typeof index !== 'number') continue
    const rowIndex = rows.findIndex(({ id }) => sheet.layerIds.get(id) === design.construction.layers[index]?.id)
    const row = rows[rowIndex]
    if (row === undefined) continue
    const columnIndex = Math.max(
      0,
      sheet.table.columns.findIndex(({ key }) => key === field),
    )
    const { title = '' } = sheet.table.columns[columnIndex] ?? {}
    const fault = {
      line: rowIndex + 1,
      column: title,
      columnIndex,
      text: row.texts[columnIndex] ?? '',
      reason: message,
    }
    placed.set(row.id, [...(placed.get(row.id) ?? []), fault])
  }
  return placed
}
