'use client'

import './grid.css'
import { type ClipboardEvent, type KeyboardEvent, useCallback, useId, useRef, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataTable } from '@/app/_components/ui/data-table'
import type { BadCell, FabricationTable } from '@/lib/fabrication/table'
import { readClipboard, writeClipboard } from '@/lib/spreadsheet/text'
import { applyKey } from './grid-keys'
import { GridRowView } from './grid-row-view'
import {
  addRow,
  beginEditing,
  changeEditing,
  clearSelection,
  commitEditing,
  findSelection,
  type GridState,
  moveTo,
  paste,
  readSelection,
  removeSelectedRows,
  undo,
} from './grid-state'

interface SheetGridProps<R> {
  readonly label: string
  readonly table: FabricationTable<R>
  readonly state: GridState
  readonly onChange: (next: (state: GridState) => GridState) => void
  readonly faults: ReadonlyMap<number, readonly BadCell[]>
  readonly isReadOnly: boolean
  /** Takes a pasted block with headings of its own as a whole; false lets it go into the cells. */
  readonly onTable?: (block: readonly (readonly string[])[]) => boolean
}

/** Rows drawn at a time: a matrix may have thousands. */
const PAGE_ROWS = 100
const NO_FAULTS: readonly BadCell[] = []

/** A sheet as a grid of cells: arrows, Enter, Tab, Escape and Delete, blocks copied from and pasted to a spreadsheet. */
export function FabricationGrid<R>({ label, table, state, onChange, faults, isReadOnly, onTable }: SheetGridProps<R>) {
  const listPrefix = useId()
  const helpId = useId()
  const [hasFocus, setHasFocus] = useState(false)
  /** After Escape the next Tab leaves the grid. */
  const leaves = useRef(false)
  const pageCount = Math.max(1, Math.ceil(state.rows.length / PAGE_ROWS))
  const page = Math.min(Math.floor(state.cursor.row / PAGE_ROWS), pageCount - 1)
  const first = page * PAGE_ROWS
  const selection = findSelection(state)

  const onKeyDown = (event: KeyboardEvent) => {
    const key = { key: event.key, shift: event.shiftKey, control: event.ctrlKey || event.metaKey, alt: event.altKey }
    if (event.key === 'Tab' && leaves.current && state.editing === null) return
    leaves.current = event.key === 'Escape' && state.editing === null
    const next = event.nativeEvent.isComposing ? null : applyKey(state, key, isReadOnly)
    if (next === null) return
    event.preventDefault()
    onChange(() => next)
  }
  const onCopy = (event: ClipboardEvent) => {
    if (state.editing !== null) return
    event.preventDefault()
    event.clipboardData.setData('text/plain', writeClipboard(readSelection(state)))
    if (event.type === 'cut' && !isReadOnly) onChange(clearSelection)
  }
  const onPaste = (event: ClipboardEvent) => {
    if (state.editing !== null || isReadOnly) return
    event.preventDefault()
    const block = readClipboard(event.clipboardData.getData('text/plain'))
    if (block.length > 0 && onTable?.(block) !== true) onChange((now) => paste(now, block))
  }
  const onPoint = useCallback(
    (row: number, column: number, extends_: boolean) => {
      setHasFocus(true)
      onChange((now) => moveTo(commitEditing(now), { row, column }, extends_))
    },
    [onChange],
  )
  const onEdit = useCallback(() => {
    if (!isReadOnly) onChange((now) => beginEditing(now))
  }, [onChange, isReadOnly])
  const onType = useCallback((text: string) => onChange((now) => changeEditing(now, text)), [onChange])
  const onLeaveEditor = useCallback(() => onChange(commitEditing), [onChange])
  const listOf = useCallback(
    (columnIndex: number) =>
      (table.columns[columnIndex]?.choices.length ?? 0) > 0 ? `${listPrefix}-${columnIndex}` : undefined,
    [table, listPrefix],
  )
  const goToRow = (row: number) => onChange((now) => moveTo(now, { row, column: now.cursor.column }))
  const faultyRow = findNextFault(state, faults)

  const columns: Columns = {
    row: { head: 'Row', isHeadHidden: true },
    ...Object.fromEntries(
      table.columns.map(({ key, title, hint, widthRem, isNumeric }) => [
        key,
        { head: title, isNumeric, minWidthRem: widthRem, ...(hint === '' ? {} : { headNote: hint }) },
      ]),
    ),
  }
  return (
    <div>
      <GridTools
        state={state}
        isReadOnly={isReadOnly}
        faultCount={faults.size}
        onChange={onChange}
        onNextFault={() => {
          if (faultyRow !== null) onChange((now) => moveTo(now, faultyRow))
        }}
      />
      <p id={helpId} className="small muted no-print">
        {isReadOnly
          ? 'Arrow keys move, Shift extends, Ctrl C copies. Escape, then Tab, leaves the grid.'
          : 'Arrow keys move, typing or Enter edits, Tab moves on, Escape cancels, Delete clears. Ctrl D fills down, Alt with an arrow moves the row. You can paste blocks from a spreadsheet. Escape, then Tab, leaves the grid.'}
      </p>
      <DataTable
        label={label}
        columns={columns}
        isStacked={false}
        className="grid-table"
        frameClassName="grid-frame"
        role="grid"
        aria-label={label}
        aria-describedby={helpId}
        aria-rowcount={state.rows.length + 1}
        aria-colcount={table.columns.length + 1}
        aria-readonly={isReadOnly}
        aria-multiselectable
        headRowIndex={1}
        onKeyDown={onKeyDown}
        onCopy={onCopy}
        onCut={onCopy}
        onPaste={onPaste}
        onFocus={() => setHasFocus(true)}
        onBlur={(event) => setHasFocus(event.currentTarget.contains(event.relatedTarget))}
      >
        {state.rows.slice(first, first + PAGE_ROWS).map((row, offset) => {
          const index = first + offset
          const isCursorRow = index === state.cursor.row
          const isSelected = index >= selection.top && index <= selection.bottom
          return (
            <GridRowView
              key={row.id}
              columns={table.columns}
              row={row}
              index={index}
              cursorColumn={isCursorRow ? state.cursor.column : null}
              editing={isCursorRow ? state.editing : null}
              selected={isSelected ? selection : null}
              faults={faults.get(row.id) ?? NO_FAULTS}
              hasFocus={isCursorRow && hasFocus}
              onPoint={onPoint}
              onEdit={onEdit}
              onType={onType}
              onLeaveEditor={onLeaveEditor}
              listOf={listOf}
            />
          )
        })}
      </DataTable>
      {state.rows.length === 0 && <p className="empty">No row yet.</p>}
      {pageCount > 1 && (
        <div className="row small no-print">
          <Button weight="quiet" isDisabled={page === 0} onPress={() => goToRow(first - PAGE_ROWS)}>
            Earlier rows
          </Button>
          <span>
            Rows {first + 1} to {Math.min(first + PAGE_ROWS, state.rows.length)} of {state.rows.length}
          </span>
          <Button weight="quiet" isDisabled={page === pageCount - 1} onPress={() => goToRow(first + PAGE_ROWS)}>
            Later rows
          </Button>
        </div>
      )}
      {table.columns.map(({ key, choices }, columnIndex) =>
        choices.length === 0 ? null : (
          <datalist key={key} id={`${listPrefix}-${columnIndex}`}>
            {choices.map((choice) => (
              <option key={choice} value={choice} />
            ))}
          </datalist>
        ),
      )}
    </div>
  )
}

interface GridToolsProps {
  readonly state: GridState
  readonly isReadOnly: boolean
  readonly faultCount: number
  readonly onChange: SheetGridProps<unknown>['onChange']
  readonly onNextFault: () => void
}

function GridTools({ state, isReadOnly, faultCount, onChange, onNextFault }: GridToolsProps) {
  if (isReadOnly) return null
  const { top, bottom } = findSelection(state)
  const selectedCount = bottom - top + 1
  return (
    <div className="row no-print">
      <Button onPress={() => onChange((now) => addRow(now, now.rows.length === 0 ? -1 : now.cursor.row))}>
        Add a row
      </Button>
      <Button isDisabled={state.rows.length === 0} onPress={() => onChange(removeSelectedRows)}>
        {selectedCount === 1 ? 'Remove the row' : `Remove ${selectedCount} rows`}
      </Button>
      <Button isDisabled={state.past.length === 0} onPress={() => onChange(undo)}>
        Undo
      </Button>
      {faultCount > 0 && (
        <Button onPress={onNextFault}>
          {faultCount === 1 ? 'Go to the row that cannot be' : `Go to the next of ${faultCount} rows that cannot be`}
        </Button>
      )}
    </div>
  )
}

/** The next faulty cell after the cursor, from the top again behind the last. */
function findNextFault(state: GridState, faults: ReadonlyMap<number, readonly BadCell[]>) {
  if (faults.size === 0) return null
  const count = state.rows.length
  for (let offset = 1; offset <= count; offset += 1) {
    const row = (state.cursor.row + offset) % count
    const found = faults.get(state.rows[row]?.id ?? -1)?.[0]
    if (found !== undefined) return { row, column: found.columnIndex }
  }
  return null
}
