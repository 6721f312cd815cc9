import { describe, expect, it } from 'vitest'
import { MATRIX_TABLE, readTableFile, readTableRow, SHELF_TABLE, TRADE_PARAMETERS, writeTable } from '@/lib/fabrication'
import { readCsv, readXlsx, writeCsv, writeXlsx } from '@/lib/spreadsheet'

const NUMBERED = TRADE_PARAMETERS.filter(({ direction }) => direction === 'smaller-is-harder')

/** A matrix of so many rows, in which the given lines are bad in turn by each of five mistakes. */
function makeGrid(rowCount: number, badRows: ReadonlySet<number>): (string | number)[][] {
  const mistakes: ((cells: (string | number)[]) => void)[] = [
    (cells) => {
      cells[0] = 'colour of the box'
    },
    (cells) => {
      cells[1] = 'narrow'
    },
    (cells) => {
      cells[2] = 99
    },
    (cells) => {
      cells[3] = 'furlong'
    },
    (cells) => {
      cells[5] = 0
    },
  ]
  const rows = Array.from({ length: rowCount }, (_, index) => {
    const parameter = NUMBERED[index % NUMBERED.length]
    const layers = 1 + Math.floor(index / NUMBERED.length)
    const cells: (string | number)[] = [
      parameter?.name ?? '',
      0.5,
      0.25,
      '',
      layers,
      layers,
      '',
      '',
      '',
      `row ${index}`,
    ]
    if (badRows.has(index)) mistakes[index % mistakes.length]?.(cells)
    return cells
  })
  return [MATRIX_TABLE.columns.map(({ title }) => title), ...rows]
}

describe('a matrix of 5,000 rows with 200 bad ones', () => {
  const badRows = new Set(Array.from({ length: 200 }, (_, index) => index * 24 + 7))
  // Layer counts end at 200; rows beyond would be bad for that.
  const grid = makeGrid(5000, badRows)
  const wanted = [...badRows].map((index) => index + 2)

  it.each(['csv', 'xlsx'] as const)(
    'as %s: all 200 are named with row, column and reason, and no other',
    async (format) => {
      const bytes = format === 'csv' ? new TextEncoder().encode(writeCsv(grid)) : await writeXlsx('Matrix', grid)
      const file = format === 'csv' ? readCsv(bytes) : readXlsx(bytes)
      if (!file.ok) throw new Error(file.reason)
      const found = readTableFile(MATRIX_TABLE, file.grid)
      if (!found.ok) throw new Error(found.reason)
      expect(found.rowCount).toBe(5000)
      expect([...new Set(found.bad.map(({ line }) => line))]).toEqual(wanted)
      expect(found.rows).toHaveLength(4800)
      expect(found.bad.filter(({ column, reason }) => column === '' || reason === '')).toEqual([])
      expect(new Set(found.bad.map(({ column }) => column))).toEqual(
        new Set(['Parameter', 'Comfortable', 'Stretch', 'Unit', 'Layers to']),
      )
    },
  )
})

describe('cells', () => {
  const read = (...texts: string[]) => readTableRow(MATRIX_TABLE, texts, 1)
  it('numbers have a point or a comma, and may carry their unit', () => {
    expect(read('conductor-width', '0,1', '.075 mm', 'MM')).toMatchObject({
      ok: true,
      row: { comfortable: 0.1, stretch: 0.075 },
    })
    expect(read('conductor-width', '75 um')).toMatchObject({
      ok: false,
      bad: [{ reason: '"75 um" is not a number in mm' }],
    })
    expect(read('conductor-width', '1,000.5')).toMatchObject({ ok: false })
  })

  it('choices are parted by semicolons', () => {
    expect(read('surface-finish', 'Immersion tin; immersion-silver')).toMatchObject({
      ok: true,
      row: { comfortable: ['immersion-tin', 'immersion-silver'] },
    })
  })

  it('a unit that is not the parameter’s is refused', () => {
    expect(read('conductor-width', '100', '75', 'um')).toMatchObject({ ok: false, bad: [{ column: 'Unit' }] })
  })

  it('what is written is read as it was', () => {
    const rows = [
      ['conductor-width', '0.1', '0.075', '', '1', '4', '', '18', 'rigid-flex', '=1+1'],
      ['surface-finish', 'immersion tin', '', '', '', '', '', '', '', ''],
      ['stiffener-material', 'EN 1.4310; fr4-laminate', '', '', '', '', '', '', '', '-5'],
    ].map((texts, line) => {
      const reading = readTableRow(MATRIX_TABLE, texts, line)
      if (!reading.ok) throw new Error(reading.bad[0]?.reason)
      return reading.row
    })
    const file = readCsv(new TextEncoder().encode(writeCsv(writeTable(MATRIX_TABLE, rows))))
    if (!file.ok) throw new Error(file.reason)
    const found = readTableFile(MATRIX_TABLE, file.grid)
    expect(found).toMatchObject({ ok: true, bad: [], unknownColumns: [] })
    expect(found.ok && found.rows.map(({ row }) => row)).toEqual(rows)
  })
})

it('headings may stand in any order; a missing one is named, an unknown one is told', () => {
  const grid = (rows: string[][]) => readTableFile(SHELF_TABLE, { rows, refused: [] })
  expect(
    grid([
      ['On the shelf', 'thicknessum', 'MATERIAL', 'Price'],
      ['yes', '25', 'pi-coverlay', '3'],
    ]),
  ).toMatchObject({ ok: true, rows: [{ row: { material: 'pi-coverlay', onShelf: true } }], unknownColumns: ['Price'] })
  expect(grid([['Material', 'Thickness']])).toMatchObject({
    ok: false,
    reason: expect.stringContaining('"On the shelf"'),
  })
  expect(grid([])).toMatchObject({ ok: false })
})
