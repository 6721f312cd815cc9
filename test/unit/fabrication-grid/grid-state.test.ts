import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyKey } from '@/app/_components/fabrication/grid/grid-keys'
import {
  addRow,
  countUnsaved,
  type GridState,
  makeGrid,
  moveTo,
  paste,
  readSelection,
  removeSelectedRows,
  undo,
} from '@/app/_components/fabrication/grid/grid-state'
import { readClipboard, writeClipboard } from '@/lib/spreadsheet/text'

const GRID = makeGrid(3, [
  ['a1', 'b1', 'c1'],
  ['a2', 'b2', 'c2'],
])
const texts = ({ rows }: GridState) => rows.map((row) => row.texts)
/** `+X` with shift, `^X` with control, `!X` with Alt. */
const press = (state: GridState, ...keys: string[]): GridState =>
  keys.reduce((now, name) => {
    const shift = name.length > 1 && name.startsWith('+')
    const control = name.length > 1 && name.startsWith('^')
    const alt = name.length > 1 && name.startsWith('!')
    return applyKey(now, { key: shift || control || alt ? name.slice(1) : name, shift, control, alt }, false) ?? now
  }, state)

describe('keys', () => {
  it('arrows move within the grid', () => {
    expect(press(GRID, 'ArrowDown', 'ArrowRight', 'ArrowRight').cursor).toEqual({ row: 1, column: 2 })
    expect(press(GRID, 'ArrowUp', 'ArrowLeft').cursor).toEqual({ row: 0, column: 0 })
    expect(press(GRID, '^End').cursor).toEqual({ row: 1, column: 2 })
  })

  it('typing replaces, Enter takes over and goes down, Escape leaves the cell as it was', () => {
    const typed = press(GRID, 'x')
    expect(typed.editing).toBe('x')
    const done = press(typed, 'Enter')
    expect([texts(done)[0]?.[0], done.cursor, done.editing]).toEqual(['x', { row: 1, column: 0 }, null])
    expect(texts(press(typed, 'Escape'))).toEqual(texts(GRID))
    expect(press(GRID, 'F2').editing).toBe('a1')
  })

  it('Tab goes from cell to cell in reading order, and out behind the last', () => {
    expect(press(GRID, 'Tab', 'Tab', 'Tab').cursor).toEqual({ row: 1, column: 0 })
    expect(press(GRID, 'x', 'Tab', 'y', 'Tab').rows[0]?.texts).toEqual(['x', 'y', 'c1'])
    const last = press(GRID, '^End')
    expect(applyKey(last, { key: 'Tab', shift: false, control: false }, false)).toBeNull()
    expect(applyKey(GRID, { key: 'Tab', shift: true, control: false }, false)).toBeNull()
  })

  it('Enter in the last row adds one below', () => {
    const done = press(GRID, 'ArrowDown', 'x', 'Enter')
    expect([done.rows.length, done.cursor]).toEqual([3, { row: 2, column: 0 }])
  })

  it('Delete clears what is selected', () => {
    expect(texts(press(GRID, '+ArrowRight', '+ArrowDown', 'Delete'))).toEqual([
      ['', '', 'c1'],
      ['', '', 'c2'],
    ])
  })

  it('change nothing where it is read-only', () => {
    for (const key of ['x', 'Enter', 'Delete', 'F2']) {
      expect(applyKey(GRID, { key, shift: false, control: false }, true)).toBeNull()
    }
  })
})

describe('blocks', () => {
  it('a pasted block begins at the cursor, adds rows, and leaves out what has no column', () => {
    const done = paste(moveTo(GRID, { row: 1, column: 1 }), [
      ['1', '2', '3'],
      ['4', '5'],
    ])
    expect(texts(done)).toEqual([
      ['a1', 'b1', 'c1'],
      ['a2', '1', '2'],
      ['', '4', '5'],
    ])
    expect(readSelection(done)).toEqual([
      ['1', '2'],
      ['4', '5'],
    ])
  })

  it('one cell fills the selection', () => {
    expect(texts(paste(press(GRID, '+ArrowDown'), [['z']]))).toEqual([
      ['z', 'b1', 'c1'],
      ['z', 'b2', 'c2'],
    ])
  })

  it('what is copied and pasted is the same, whatever it holds', () => {
    const cell = fc.string({ maxLength: 8, unit: fc.constantFrom('a', '"', '\t', '\n', '=', "'", ' ', '5') })
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 2 }), { minLength: 1, maxLength: 4 }), (block) => {
        expect(readClipboard(writeClipboard(block))).toEqual(block)
      }),
    )
  })

  it('reads what spreadsheet programs put on the clipboard', () => {
    expect(readClipboard('a\tb\r\n1\t"two\nlines"\r\n')).toEqual([
      ['a', 'b'],
      ['1', 'two\nlines'],
    ])
    expect(readClipboard('3" pipe\tx')).toEqual([['3" pipe', 'x']])
  })
})

describe('filling down and moving rows', () => {
  it('copies the first row of the selection down, or the row above where one row is selected', () => {
    expect(texts(press(GRID, '+ArrowDown', '^d'))).toEqual([
      ['a1', 'b1', 'c1'],
      ['a1', 'b2', 'c2'],
    ])
    expect(texts(press(GRID, 'ArrowDown', 'ArrowRight', '^d'))).toEqual([
      ['a1', 'b1', 'c1'],
      ['a2', 'b1', 'c2'],
    ])
    expect(press(GRID, '^d').rows).toBe(GRID.rows)
  })

  it('moves the row, which stays the same row, and stops at the ends', () => {
    const moved = press(GRID, '!ArrowDown')
    expect(moved.rows.map(({ id }) => id)).toEqual([1, 0])
    expect(moved.cursor.row).toBe(1)
    expect(press(moved, '!ArrowDown').rows).toBe(moved.rows)
    expect(texts(press(moved, '^z'))).toEqual(texts(GRID))
  })

  it('leaves undo to the page where nothing was done here', () => {
    expect(applyKey(GRID, { key: 'z', shift: false, control: true }, false)).toBeNull()
  })
})

describe('what is not saved', () => {
  it('counts rows that differ, new ones that hold something, and those taken away', () => {
    expect(countUnsaved(press(GRID, 'x', 'Enter'))).toBe(1)
    expect(countUnsaved(addRow(GRID, 1))).toBe(0)
    expect(countUnsaved(removeSelectedRows(GRID))).toBe(1)
    expect(countUnsaved(press(GRID, 'a', '1', 'Escape'))).toBe(0)
  })

  it('every step can be taken back', () => {
    const steps: ((state: GridState) => GridState)[] = [
      (state) => press(state, 'x', 'Enter'),
      (state) => paste(state, [['p', 'q']]),
      (state) => removeSelectedRows(state),
      (state) => addRow(state, 0),
      (state) => press(state, 'Delete'),
    ]
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...steps), { maxLength: 12 }), (acts) => {
        let state = acts.reduce((now, act) => act(now), GRID)
        while (state.past.length > 0) state = undo(state)
        expect(texts(state)).toEqual(texts(GRID))
        expect(countUnsaved(state)).toBe(0)
      }),
    )
  })
})
