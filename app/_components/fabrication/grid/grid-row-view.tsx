'use client'

import { memo, useEffect, useRef } from 'react'
import type { BadCell, TableColumn } from '@/lib/fabrication/table'
import type { Block, GridRow } from './grid-state'

interface GridRowViewProps<R> {
  readonly columns: readonly TableColumn<R>[]
  readonly row: GridRow
  readonly index: number
  /** Column of the cursor, where it is in this row. */
  readonly cursorColumn: number | null
  readonly editing: string | null
  /** Columns of this row that are selected. */
  readonly selected: Pick<Block, 'left' | 'right'> | null
  readonly faults: readonly BadCell[]
  readonly hasFocus: boolean
  readonly onPoint: (row: number, column: number, extends_: boolean) => void
  readonly onEdit: () => void
  readonly onType: (text: string) => void
  readonly onLeaveEditor: () => void
  /** Id of the list of suggestions of a column. */
  readonly listOf: (columnIndex: number) => string | undefined
}

function GridRowPlain<R>({
  columns,
  row,
  index,
  cursorColumn,
  editing,
  selected,
  faults,
  hasFocus,
  onPoint,
  onEdit,
  onType,
  onLeaveEditor,
  listOf,
}: GridRowViewProps<R>) {
  return (
    <tr aria-rowindex={index + 2} data-faulty={faults.length > 0 || undefined}>
      <th scope="row" className="num">
        {index + 1}
      </th>
      {columns.map((column, columnIndex) => {
        const text = row.texts[columnIndex] ?? ''
        const reasons = faults.filter((fault) => fault.columnIndex === columnIndex).map(({ reason }) => reason)
        const isUnsaved = row.saved === null ? text !== '' : row.saved[columnIndex] !== text
        const isCursor = cursorColumn === columnIndex
        return (
          <GridCell
            key={column.key}
            columnIndex={columnIndex}
            column={column}
            text={text}
            reasons={reasons}
            isUnsaved={isUnsaved}
            isCursor={isCursor}
            takesFocus={isCursor && hasFocus}
            isSelected={selected !== null && columnIndex >= selected.left && columnIndex <= selected.right}
            editing={isCursor ? editing : null}
            listId={listOf(columnIndex)}
            onPoint={(extends_) => onPoint(index, columnIndex, extends_)}
            onEdit={onEdit}
            onType={onType}
            onLeaveEditor={onLeaveEditor}
          />
        )
      })}
    </tr>
  )
}

/** A row is drawn again only when something in it moved: its page may hold a hundred. */
export const GridRowView = memo(GridRowPlain) as typeof GridRowPlain

interface GridCellProps<R> {
  readonly column: TableColumn<R>
  readonly columnIndex: number
  readonly text: string
  readonly reasons: readonly string[]
  readonly isUnsaved: boolean
  readonly isCursor: boolean
  readonly takesFocus: boolean
  readonly isSelected: boolean
  readonly editing: string | null
  readonly listId: string | undefined
  readonly onPoint: (extends_: boolean) => void
  readonly onEdit: () => void
  readonly onType: (text: string) => void
  readonly onLeaveEditor: () => void
}

function GridCell<R>(props: GridCellProps<R>) {
  const { column, columnIndex, text, reasons, isUnsaved, isCursor, takesFocus, isSelected, editing, listId } = props
  const cell = useRef<HTMLTableCellElement>(null)
  useEffect(() => {
    if (takesFocus && editing === null) cell.current?.focus()
  }, [takesFocus, editing])
  return (
    // The keys of all cells are handled by the grid itself, as its pattern asks.
    <td
      ref={cell}
      // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a cell of a grid takes the focus
      role="gridcell"
      aria-colindex={columnIndex + 2}
      aria-selected={isSelected}
      aria-invalid={reasons.length > 0 || undefined}
      data-unsaved={isUnsaved || undefined}
      data-cursor={isCursor || undefined}
      className={column.isNumeric ? 'num' : undefined}
      tabIndex={isCursor ? 0 : -1}
      onMouseDown={(event) => {
        if (editing === null) {
          event.preventDefault()
          props.onPoint(event.shiftKey)
        }
      }}
      onDoubleClick={props.onEdit}
    >
      {editing === null ? (
        <span className="cell-text">{text}</span>
      ) : (
        <CellEditor
          label={column.title}
          text={editing}
          listId={listId}
          onType={props.onType}
          onLeave={props.onLeaveEditor}
        />
      )}
      {isUnsaved && <span className="sr-only"> (not saved)</span>}
      {reasons.length > 0 && <span className="cell-fault">{reasons.join('; ')}</span>}
    </td>
  )
}

interface CellEditorProps {
  readonly label: string
  readonly text: string
  readonly listId: string | undefined
  readonly onType: (text: string) => void
  readonly onLeave: () => void
}

function CellEditor({ label, text, listId, onType, onLeave }: CellEditorProps) {
  const input = useRef<HTMLInputElement>(null)
  useEffect(() => {
    const element = input.current
    element?.focus()
    element?.setSelectionRange(element.value.length, element.value.length)
  }, [])
  return (
    <input
      ref={input}
      className="cell-editor"
      aria-label={label}
      autoComplete="off"
      list={listId}
      value={text}
      onChange={(event) => onType(event.target.value)}
      onBlur={onLeave}
    />
  )
}
