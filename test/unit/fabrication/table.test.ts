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
    expect(read('conductor-width', '75 um')).toMatchObject({ ok: true, row: { comfortable: 0.075 } })
    expect(read('conductor-width', '75 mg')).toMatchObject({
      ok: false,
      bad: [{ reason: '"75 mg" is not a number in mm' }],
    })
    expect(read('conductor-width', '1,000.5')).toMatchObject({ ok: false })
  })

  it('a parameter is known by its key, its name, and the name that it had before', () => {
    for (const name of [
      'coverlay-registration',
      'Coverlay overlap on pad, minimum',
      'How little may the coverlay reach over the rim of a pad?',
    ]) {
      expect(read(name, '0.1')).toMatchObject({ ok: true, row: { parameter: 'coverlay-registration' } })
    }
  })

  it('choices are parted by semicolons', () => {
    expect(read('surface-finish', 'Immersion tin; immersion-silver')).toMatchObject({
      ok: true,
      row: { comfortable: ['immersion-tin', 'immersion-silver'] },
    })
  })

  it('a length may be stated in any unit of length; a unit that is none is refused', () => {
    expect(read('conductor-width', '100', '75', 'um')).toMatchObject({
      ok: true,
      row: { comfortable: 0.1, stretch: 0.075 },
    })
    expect(read('conductor-width', '4', '3', 'mil')).toMatchObject({
      ok: true,
      row: { comfortable: 0.1016, stretch: 0.0762 },
    })
    expect(read('conductor-width', '100', '75', 'deg')).toMatchObject({ ok: false, bad: [{ column: 'Unit' }] })
    expect(read('conductor-layer-count', '4', '6', 'mm')).toMatchObject({ ok: false, bad: [{ column: 'Unit' }] })
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

describe('a shelf as a file, in the unit that the reader chose', () => {
  const [shelf] = [
    ['pi-coverlay', '12.345', '', '', '', 'acrylic-adhesive', '25.4', 'roll', '609.6', 'yes', '5', '10', ''],
    ['pi-coverlay', '25', '', '', '', 'acrylic-adhesive', '0.1', 'roll', '12.345', 'yes', '5', '10', ''],
  ].map((_, __, rows) =>
    rows.map((texts, line) => {
      const reading = readTableRow(SHELF_TABLE, texts, line)
      if (!reading.ok) throw new Error(JSON.stringify(reading.bad))
      return reading.row
    }),
  )
  if (shelf === undefined) throw new Error('no rows')

  it.each([
    ['um', 'Thickness, µm', 'Width, mm', 12.345, 609.6],
    ['mm', 'Thickness, mm', 'Width, mm', 0.012345, 609.6],
    ['mil', 'Thickness, mil', 'Width, mil', 12.345 / 25.4, 24000],
    ['in', 'Thickness, in', 'Width, in', 12.345 / 25400, 24],
  ] as const)(
    'in %s: headings name the unit, and what is read back is what was stated',
    (unit, head, width, thickness, mm) => {
      const cells = writeTable(SHELF_TABLE, shelf, unit)
      expect(cells[0]).toContain(head)
      expect(cells[0]).toContain(width)
      expect(cells[0]).toContain('Lead time, days')
      expect(cells[0]).toContain('Minimum order, m²')
      expect(cells[1]?.[1]).toBeCloseTo(thickness, 12)
      expect(cells[1]?.[8]).toBeCloseTo(mm, 9)
      const file = readCsv(new TextEncoder().encode(writeCsv(cells)))
      if (!file.ok) throw new Error(file.reason)
      const found = readTableFile(SHELF_TABLE, file.grid)
      expect(found).toMatchObject({ ok: true, bad: [], unknownColumns: [] })
      expect(found.ok && found.rows.map(({ row }) => row)).toEqual(shelf)
    },
  )

  it('a heading with a unit that is not a length is not taken for the column', () => {
    const found = readTableFile(SHELF_TABLE, { rows: [['Material', 'Thickness, kg', 'On the shelf']], refused: [] })
    expect(found).toMatchObject({ ok: false, reason: expect.stringContaining('"Thickness"') })
  })

  it('a matrix names the unit in each row', () => {
    const reading = readTableRow(MATRIX_TABLE, ['conductor-width', '0.1016', '0.0762'], 1)
    if (!reading.ok) throw new Error('not read')
    const [, cells] = writeTable(MATRIX_TABLE, [reading.row], 'mil')
    expect(cells?.slice(1, 4)).toEqual([4, 3, 'mil'])
    const [, own] = writeTable(MATRIX_TABLE, [reading.row])
    expect(own?.slice(1, 4)).toEqual([0.1016, 0.0762, 'mm'])
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

it('finds the headings below a title, and names lines of the file as it counts them', () => {
  const rows = [
    ['Our capabilities'],
    ['as of March'],
    [],
    ['Note', 'Material', 'Thickness', 'On the shelf'],
    ['', 'pi-coverlay', 'thick', 'yes'],
  ]
  const reading = readTableFile(SHELF_TABLE, { rows, refused: [] })
  expect(reading).toMatchObject({ ok: true, bad: [{ line: 5, column: 'Thickness' }] })
})
