/**
 * A grid of text cells as one value: what each key and paste does to it, without a screen. Rows keep an identity, so that
 * a row that moved is still the same row, and what was saved stays beside what is there now.
 */
export interface GridRow {
  readonly id: number
  readonly texts: readonly string[]
  /** As saved; null for a row that is new. */
  readonly saved: readonly string[] | null
}

export interface CellPosition {
  readonly row: number
  readonly column: number
}

export interface GridState {
  readonly columnCount: number
  readonly rows: readonly GridRow[]
  readonly cursor: CellPosition
  /** The other corner of what is selected; the cursor itself where one cell is. */
  readonly anchor: CellPosition
  /** Text of the cell that is being edited. */
  readonly editing: string | null
  readonly removedCount: number
  readonly nextId: number
  readonly past: readonly Snapshot[]
}

type Snapshot = Pick<GridState, 'rows' | 'removedCount' | 'cursor'>

/** How many steps back can be taken. */
const MAX_PAST = 100

export function makeGrid(columnCount: number, rows: readonly (readonly string[])[]): GridState {
  const start = { row: 0, column: 0 }
  return {
    columnCount,
    rows: rows.map((texts, id) => ({ id, texts, saved: texts })),
    cursor: start,
    anchor: start,
    editing: null,
    removedCount: 0,
    nextId: rows.length,
    past: [],
  }
}

const clamp = (value: number, most: number) => Math.max(0, Math.min(value, most))

/** Puts the cursor somewhere within the grid. @param keepsAnchor  what lies between becomes selected */
export function moveTo(state: GridState, to: CellPosition, keepsAnchor = false): GridState {
  const cursor = {
    row: clamp(to.row, Math.max(0, state.rows.length - 1)),
    column: clamp(to.column, state.columnCount - 1),
  }
  return { ...state, cursor, anchor: keepsAnchor ? state.anchor : cursor, editing: null }
}

export function moveBy(state: GridState, rows: number, columns: number, keepsAnchor = false): GridState {
  const { row, column } = state.cursor
  return moveTo(state, { row: row + rows, column: column + columns }, keepsAnchor)
}

/** The next cell in reading order, or the one before; null beyond the last and the first, where the focus goes on. */
export function step(state: GridState, direction: 1 | -1): GridState | null {
  const at = state.cursor.row * state.columnCount + state.cursor.column + direction
  if (at < 0 || at >= state.rows.length * state.columnCount) return null
  return moveTo(state, { row: Math.floor(at / state.columnCount), column: at % state.columnCount })
}

export interface Block {
  readonly top: number
  readonly bottom: number
  readonly left: number
  readonly right: number
}

export function findSelection({ cursor, anchor }: Pick<GridState, 'cursor' | 'anchor'>): Block {
  return {
    top: Math.min(cursor.row, anchor.row),
    bottom: Math.max(cursor.row, anchor.row),
    left: Math.min(cursor.column, anchor.column),
    right: Math.max(cursor.column, anchor.column),
  }
}

export function readSelection(state: GridState): string[][] {
  const { top, bottom, left, right } = findSelection(state)
  return state.rows.slice(top, bottom + 1).map(({ texts }) => texts.slice(left, right + 1))
}

/** @param text  what takes the cell's place, as when a letter is typed on it; left out, the cell's own is edited */
export function beginEditing(state: GridState, text?: string): GridState {
  const own = state.rows[state.cursor.row]?.texts[state.cursor.column]
  return own === undefined ? state : { ...state, editing: text ?? own }
}

export function changeEditing(state: GridState, text: string): GridState {
  return { ...state, editing: text }
}

/** Leaves the cell as it was. */
export function cancelEditing(state: GridState): GridState {
  return { ...state, editing: null }
}

/** Takes what was typed over. */
export function commitEditing(state: GridState): GridState {
  if (state.editing === null) return state
  return { ...writeBlock(state, state.cursor, [[state.editing]]), editing: null }
}

export function clearSelection(state: GridState): GridState {
  const { top, left } = findSelection(state)
  const empty = readSelection(state).map((row) => row.map(() => ''))
  return { ...writeBlock(state, { row: top, column: left }, empty), cursor: state.cursor, anchor: state.anchor }
}

/**
 * Puts a block of cells in, from the selection's upper left corner; rows that are missing are added, and what would stand
 * beyond the last column is left out. One cell fills the whole selection.
 */
export function paste(state: GridState, cells: readonly (readonly string[])[]): GridState {
  const { top, bottom, left, right } = findSelection(state)
  const [only] = cells.length === 1 && cells[0]?.length === 1 ? cells[0] : []
  if (only !== undefined) {
    const filled = Array.from({ length: bottom - top + 1 }, () => Array.from({ length: right - left + 1 }, () => only))
    return { ...writeBlock(state, { row: top, column: left }, filled), cursor: state.cursor, anchor: state.anchor }
  }
  const written = writeBlock(state, { row: top, column: left }, cells)
  const widest = Math.max(...cells.map((row) => row.length), 1)
  const end = { row: top + cells.length - 1, column: Math.min(left + widest, state.columnCount) - 1 }
  return { ...written, anchor: { row: top, column: left }, cursor: end }
}

/** Copies the first row of the selection into the rows below it; of one row, what stands above it. */
export function fillDown(state: GridState): GridState {
  const { top, bottom, left, right } = findSelection(state)
  const from = top === bottom ? top - 1 : top
  const texts = state.rows[from]?.texts.slice(left, right + 1)
  if (texts === undefined) return state
  const filled = Array.from({ length: bottom - from }, () => texts)
  return { ...writeBlock(state, { row: from + 1, column: left }, filled), cursor: state.cursor, anchor: state.anchor }
}

/** Moves the selected rows by one place, up or down; they stay selected. */
export function moveRows(state: GridState, by: 1 | -1): GridState {
  const { top, bottom } = findSelection(state)
  if (top + by < 0 || bottom + by >= state.rows.length) return state
  const taken = state.rows.slice(top, bottom + 1)
  const others = [...state.rows.slice(0, top), ...state.rows.slice(bottom + 1)]
  const rows = [...others.slice(0, top + by), ...taken, ...others.slice(top + by)]
  const shift = ({ row, column }: CellPosition) => ({ row: row + by, column })
  return { ...remember(state), rows, cursor: shift(state.cursor), anchor: shift(state.anchor) }
}

/** Adds an empty row below the given one and goes there. */
export function addRow(state: GridState, below: number): GridState {
  const row: GridRow = { id: state.nextId, texts: Array.from({ length: state.columnCount }, () => ''), saved: null }
  const rows = [...state.rows.slice(0, below + 1), row, ...state.rows.slice(below + 1)]
  return moveTo({ ...remember(state), rows, nextId: state.nextId + 1 }, { row: below + 1, column: 0 })
}

export function removeSelectedRows(state: GridState): GridState {
  const { top, bottom } = findSelection(state)
  const taken = state.rows.slice(top, bottom + 1)
  const removedCount = state.removedCount + taken.filter(({ saved }) => saved !== null).length
  const rows = [...state.rows.slice(0, top), ...state.rows.slice(bottom + 1)]
  return moveTo({ ...remember(state), rows, removedCount }, { row: top, column: state.cursor.column })
}

export function undo(state: GridState): GridState {
  const last = state.past.at(-1)
  if (last === undefined) return state
  return moveTo({ ...state, ...last, past: state.past.slice(0, -1) }, last.cursor)
}

/** Cells and rows that differ from what is saved. */
export function countUnsaved(state: GridState): number {
  const changed = state.rows.filter(({ texts, saved }) =>
    saved === null
      ? texts.some((text) => text !== '')
      : texts !== saved && texts.some((text, at) => text !== saved[at]),
  )
  return changed.length + state.removedCount
}

function remember(state: GridState): GridState {
  const { rows, removedCount, cursor } = state
  return { ...state, editing: null, past: [...state.past.slice(1 - MAX_PAST), { rows, removedCount, cursor }] }
}

function writeBlock(state: GridState, at: CellPosition, cells: readonly (readonly string[])[]): GridState {
  const isSame = cells.every((line, row) =>
    line.every((text, column) => {
      const own = state.rows[at.row + row]?.texts[at.column + column]
      return own === text || at.column + column >= state.columnCount
    }),
  )
  if (isSame && at.row + cells.length <= state.rows.length) return state
  const rows = [...state.rows]
  let { nextId } = state
  cells.forEach((line, offset) => {
    const index = at.row + offset
    const own = rows[index] ?? { id: nextId, texts: Array.from({ length: state.columnCount }, () => ''), saved: null }
    if (rows[index] === undefined) nextId += 1
    const texts = own.texts.map((text, column) => line[column - at.column] ?? text)
    rows[index] = { ...own, texts }
  })
  return { ...remember(state), rows, nextId }
}
