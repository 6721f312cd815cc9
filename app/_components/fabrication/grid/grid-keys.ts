import {
  addRow,
  beginEditing,
  cancelEditing,
  clearSelection,
  commitEditing,
  fillDown,
  type GridState,
  moveBy,
  moveRows,
  moveTo,
  step,
  undo,
} from './grid-state'

export interface GridKey {
  readonly key: string
  readonly shift: boolean
  /** Control, or the command key. */
  readonly control: boolean
  readonly alt?: boolean
}

/** How many rows a page key moves. */
const PAGE_ROWS = 20

/**
 * What a key does. Null: nothing, and the browser does what it would. `leave` lets the focus go on to what comes after
 * the grid: Escape makes the next Tab do so, since Tab itself goes from cell to cell.
 */
export function applyKey(state: GridState, key: GridKey, isReadOnly: boolean): GridState | null {
  if (key.alt === true) return state.editing === null && !isReadOnly ? applyAlt(state, key) : null
  return state.editing === null ? applyToCell(state, key, isReadOnly) : applyToEditor(state, key)
}

/** Rows change places; every other key with Alt is the browser's. */
function applyAlt(state: GridState, { key }: GridKey): GridState | null {
  if (key === 'ArrowUp') return moveRows(state, -1)
  return key === 'ArrowDown' ? moveRows(state, 1) : null
}

/** While a cell is edited the arrows belong to its text. */
function applyToEditor(state: GridState, { key, shift }: GridKey): GridState | null {
  if (key === 'Escape') return cancelEditing(state)
  if (key === 'Enter') return goDown(commitEditing(state), shift ? -1 : 1)
  if (key === 'Tab') {
    const done = commitEditing(state)
    return step(done, shift ? -1 : 1) ?? done
  }
  return null
}

/** Enter in the last row adds one: entering goes on without the mouse. */
function goDown(state: GridState, rows: 1 | -1): GridState {
  const isLast = rows === 1 && state.cursor.row === state.rows.length - 1
  return isLast
    ? moveTo(addRow(state, state.cursor.row), { row: state.cursor.row + 1, column: state.cursor.column })
    : moveBy(state, rows, 0)
}

function applyToCell(state: GridState, { key, shift, control }: GridKey, isReadOnly: boolean): GridState | null {
  const lastRow = state.rows.length - 1
  switch (key) {
    case 'ArrowUp':
      return control ? moveTo(state, { ...state.cursor, row: 0 }, shift) : moveBy(state, -1, 0, shift)
    case 'ArrowDown':
      return control ? moveTo(state, { ...state.cursor, row: lastRow }, shift) : moveBy(state, 1, 0, shift)
    case 'ArrowLeft':
      return moveBy(state, 0, control ? -state.columnCount : -1, shift)
    case 'ArrowRight':
      return moveBy(state, 0, control ? state.columnCount : 1, shift)
    case 'Home':
      return moveTo(state, { row: control ? 0 : state.cursor.row, column: 0 }, shift)
    case 'End':
      return moveTo(state, { row: control ? lastRow : state.cursor.row, column: state.columnCount - 1 }, shift)
    case 'PageUp':
      return moveBy(state, -PAGE_ROWS, 0, shift)
    case 'PageDown':
      return moveBy(state, PAGE_ROWS, 0, shift)
    case 'Tab':
      return step(state, shift ? -1 : 1)
    default:
      return isReadOnly ? null : applyChange(state, { key, shift, control })
  }
}

function applyChange(state: GridState, { key, control }: GridKey): GridState | null {
  if (control) return applyControl(state, key.toLowerCase())
  if (key === 'Enter' || key === 'F2') return beginEditing(state)
  if (key === 'Delete' || key === 'Backspace') return clearSelection(state)
  // One character: typing on a cell replaces what it says.
  return key.length === 1 ? beginEditing(state, key) : null
}

/** With nothing to undo here the key goes on to the page, which may have a step of its own. */
function applyControl(state: GridState, key: string): GridState | null {
  if (key === 'd') return fillDown(state)
  return key === 'z' && state.past.length > 0 ? undo(state) : null
}
