import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  assessCapability,
  type CapabilityVerdict,
  countCapability,
  findDecidingRows,
  findMatrixIssues,
  findParameter,
  judge,
  type MatrixRow,
  matrixContentSchema,
  measureDesign,
  TRADE_PARAMETERS,
} from '@/lib/fabrication'
import { measureDemo } from './designs'

const ROW: MatrixRow = {
  parameter: 'conductor-width',
  comfortable: 0.1,
  stretch: 0.075,
  layersFrom: null,
  layersTo: null,
  foilFromUm: null,
  foilToUm: null,
  construction: null,
  note: '',
}

const parameter = (key: string) => {
  const found = findParameter(key)
  if (found === null) throw new Error(key)
  return found
}

describe('the dictionary', () => {
  it('has unique keys, and the term of the trade first, with its question', () => {
    expect(TRADE_PARAMETERS.length).toBeGreaterThanOrEqual(100)
    expect(new Set(TRADE_PARAMETERS.map(({ key }) => key)).size).toBe(TRADE_PARAMETERS.length)
    expect(new Set(TRADE_PARAMETERS.map(({ name }) => name)).size).toBe(TRADE_PARAMETERS.length)
    expect(TRADE_PARAMETERS.filter(({ name }) => name.endsWith('?'))).toEqual([])
    const numbered = TRADE_PARAMETERS.filter(({ direction }) => direction !== 'one-of')
    expect(numbered.filter(({ name }) => !/, (minimum|maximum)$/.test(name))).toEqual([])
  })

  it('has hints that a matrix could hold: stretch goes further than comfortable', () => {
    const rows = TRADE_PARAMETERS.flatMap(({ key, hint }) =>
      hint === null ? [] : [{ ...ROW, parameter: key, comfortable: hint.comfortable, stretch: hint.stretch }],
    )
    expect(findMatrixIssues(rows)).toEqual([])
  })

  it('measures the scanning head: located values, worst first', () => {
    const { design, evaluation } = measureDemo('skua-rev-a')
    const valuesOf = (key: string) => {
      const found = parameter(key).measure({ design, evaluation })
      return found.kind === 'values' ? found.values : found
    }
    expect(valuesOf('conductor-layer-count')).toMatchObject([{ value: 4 }])
    // Hand count: the hinge and the link carry l2 and l3.
    expect(valuesOf('flex-conductor-layer-count')).toMatchObject([{ value: 2 }, { value: 2 }])
    expect(valuesOf('rigid-zone-count')).toMatchObject([{ value: 2 }])
    // Half-ounce foil is 17.1 um, and every layer is panel plated.
    expect(valuesOf('foil-thickness-smallest')).toHaveLength(4)
    expect(valuesOf('foil-thickness-smallest')).toMatchObject([{ value: 17.1, foilUm: 17.1 }, {}, {}, {}])
    expect(valuesOf('plating-process')).toMatchObject([{ value: 'panel' }, {}, {}, {}])
    expect(valuesOf('surface-finish')).toMatchObject([{ value: 'immersion-gold-over-electroless-nickel' }])
    const widths = valuesOf('plated-conductor-width')
    const numbers = Array.isArray(widths) ? widths.map(({ value }) => Number(value)) : []
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b))
    expect(numbers.length).toBeGreaterThan(0)
    // Every conductor lies on a plated layer.
    expect(parameter('conductor-width').measure({ design, evaluation })).toMatchObject({ kind: 'absent' })
  })

  it.each(['skua-rev-a', 'skua-rev-b', 'pipit-rev-a'] as const)('says of %s a value or a reason for each', (name) => {
    const measured = measureDesign(...(Object.values(measureDemo(name)) as [never, never]))
    for (const { values, without } of measured.parameters) {
      expect(values.length > 0 !== (without !== null)).toBe(true)
      expect(without?.reason ?? 'stated').not.toBe('')
    }
    expect(measured.parameters.filter(({ values }) => values.length > 0).length).toBeGreaterThan(15)
  })
})

it('the tightest tolerance of a stated impedance is what the fabricator has to hold', () => {
  const { design, evaluation } = measureDemo('skua-rev-b')
  const [first, ...rest] = design.features.conductors
  if (first === undefined) throw new Error('no conductor')
  const stated = (tolerancePct: number | null) => ({
    ...first,
    impedanceOhm: 50,
    impedance: { ...first.impedance, tolerancePct },
  })
  const measure = (conductors: typeof design.features.conductors) =>
    parameter('impedance-tolerance').measure({
      design: { ...design, features: { ...design.features, conductors } },
      evaluation,
    })
  expect(measure(rest)).toMatchObject({ kind: 'absent' })
  expect(measure([stated(null)])).toMatchObject({ kind: 'unknown' })
  expect(JSON.stringify(measure([stated(10), { ...stated(7), id: 'other' }]))).toContain('"value":7')
})

describe('a value against a row', () => {
  it.each<[number, CapabilityVerdict]>([
    [0.2, 'comfortable'],
    [0.1, 'comfortable'],
    [0.0999, 'stretch'],
    [0.075, 'stretch'],
    [0.0749, 'outside'],
  ])('smaller is harder: %s mm is %s', (value, verdict) => {
    expect(judge(parameter('conductor-width'), value, ROW)).toBe(verdict)
  })

  it.each<[number, CapabilityVerdict]>([
    [6, 'comfortable'],
    [6.01, 'stretch'],
    [8, 'stretch'],
    [8.01, 'outside'],
  ])('larger is harder: %s is %s', (value, verdict) => {
    const row = { ...ROW, parameter: 'hole-aspect-ratio', comfortable: 6, stretch: 8 }
    expect(judge(parameter('hole-aspect-ratio'), value, row)).toBe(verdict)
  })

  it('of a choice by value or by name; what a row does not list is outside', () => {
    const finish = parameter('surface-finish')
    const row = { ...ROW, parameter: 'surface-finish', comfortable: ['Immersion tin'], stretch: ['immersion-silver'] }
    expect(judge(finish, 'immersion-tin', row)).toBe('comfortable')
    expect(judge(finish, 'immersion-silver', row)).toBe('stretch')
    expect(judge(finish, 'none', row)).toBe('outside')
  })

  it('ends at the comfortable limit where no stretch is stated, and begins with stretch where no comfort is', () => {
    const width = parameter('conductor-width')
    expect(judge(width, 0.09, { ...ROW, stretch: null })).toBe('outside')
    expect(judge(width, 0.5, { ...ROW, comfortable: null })).toBe('stretch')
  })

  it('never gets easier as the value gets harder', () => {
    const order: CapabilityVerdict[] = ['comfortable', 'stretch', 'outside']
    const mm = fc.double({ min: 0.001, max: 5, noNaN: true })
    fc.assert(
      fc.property(mm, mm, mm, mm, (a, b, c, d) => {
        const row = { ...ROW, comfortable: Math.max(c, d), stretch: Math.min(c, d) }
        const [wide, narrow] = [Math.max(a, b), Math.min(a, b)].map((value) =>
          order.indexOf(judge(parameter('conductor-width'), value, row)),
        )
        expect(wide).toBeLessThanOrEqual(narrow ?? 0)
      }),
    )
  })
})

describe('conditions', () => {
  const circumstances = { layerCount: 4, family: 'rigid-flex' as const, foilUm: 17.1 }
  const find = (...rows: Partial<MatrixRow>[]) =>
    findDecidingRows(
      rows.map((row) => ({ ...ROW, ...row })),
      circumstances,
    )

  it('most conditions win over a general row', () => {
    expect(find({ note: 'any' }, { note: 'rf', construction: 'rigid-flex' })).toMatchObject([{ note: 'rf' }])
    expect(
      find({ note: 'one', layersTo: 8 }, { note: 'two', layersTo: 8, foilToUm: 18 }, { note: 'none' }),
    ).toMatchObject([{ note: 'two' }])
  })

  it('a row whose conditions do not hold never decides', () => {
    expect(find({ construction: 'single-sided' }, { layersFrom: 5 }, { layersTo: 3 }, { foilFromUm: 30 })).toEqual([])
  })

  it('foil weights are met whichever way the thickness is rounded', () => {
    expect(find({ foilFromUm: 17, foilToUm: 17 })).toHaveLength(1)
    expect(find({ foilFromUm: 17.5 })).toHaveLength(0)
  })

  it('a value that lies on no layer meets no condition on foil', () => {
    const rows = [{ ...ROW, foilToUm: 35 }]
    expect(findDecidingRows(rows, { ...circumstances, foilUm: null })).toEqual([])
  })

  it('of rows with equally many conditions the strictest decides', () => {
    const { design, evaluation } = measureDemo('skua-rev-a')
    const base = { ...ROW, parameter: 'plated-conductor-width' }
    const rows = [
      { ...base, comfortable: 0.05, stretch: 0.04, layersTo: 8, note: 'loose' },
      { ...base, comfortable: 9, stretch: 0.01, construction: 'rigid-flex' as const, note: 'strict' },
    ]
    const found = assessCapability(measureDesign(design, evaluation), rows)
    const values = found.find((entry) => entry.parameter.key === 'plated-conductor-width')?.values ?? []
    expect(values.length).toBeGreaterThan(0)
    for (const value of values) expect(value).toMatchObject({ verdict: 'stretch', row: { note: 'strict' } })
  })
})

describe('an assessment', () => {
  it('counts each value once, and says what would have to change', () => {
    const { design, evaluation } = measureDemo('skua-rev-a')
    const widest = { ...ROW, parameter: 'plated-conductor-width', comfortable: 9, stretch: 8 }
    const found = assessCapability(measureDesign(design, evaluation), [widest])
    const total = found.reduce((sum, { values }) => sum + values.length, 0)
    const { comfortable, stretch, outside, notStated } = countCapability(found)
    expect(comfortable + stretch + outside + notStated).toBe(total)
    const [worst] = found.find((entry) => entry.parameter.key === 'plated-conductor-width')?.values ?? []
    expect(worst?.change).toMatch(/^widen: [\d.]+ mm to 8 mm \(stretch work\) or 9 mm$/)
    expect(notStated).toBe(total - outside)
  })
})

describe('rows that cannot be', () => {
  const issuesOf = (row: Partial<MatrixRow>) => findMatrixIssues([{ ...ROW, ...row }]).map(({ code }) => code)
  it.each([
    ['a parameter that is not in the dictionary', { parameter: 'colour' }, ['unknown-parameter']],
    ['a stretch limit stricter than the comfortable one', { stretch: 0.2 }, ['stretch-stricter']],
    [
      'the same where larger is harder',
      { parameter: 'hole-aspect-ratio', comfortable: 8, stretch: 6 },
      ['stretch-stricter'],
    ],
    ['no limit at all', { comfortable: null, stretch: null }, ['no-limit']],
    ['a list where a number belongs', { comfortable: ['thin'], stretch: null }, ['limit']],
    ['a choice that nobody knows', { parameter: 'surface-finish', comfortable: ['varnish'], stretch: null }, ['limit']],
    ['a range that ends before it begins', { layersFrom: 8, layersTo: 4 }, ['range']],
  ])('%s', (_name, row, codes) => {
    expect(issuesOf(row)).toEqual(codes)
  })

  it('the same parameter twice under the same conditions, naming the first', () => {
    const parsed = matrixContentSchema.safeParse({ rows: [ROW, { ...ROW, comfortable: 0.2 }] })
    expect(parsed.error?.issues).toMatchObject([
      { path: ['rows', 1, 'parameter'], message: expect.stringContaining('row 1') },
    ])
  })
})

it('tolerances of the brief are held against what a fabricator holds, and one that nobody stated is not', () => {
  const { design, evaluation } = measureDemo('skua-rev-b')
  const rows = ['outline-tolerance', 'stiffener-position-tolerance'].map((key) => ({
    ...ROW,
    parameter: key,
    comfortable: 0.25,
    stretch: 0.15,
  }))
  const verdictsOf = (of: typeof design) =>
    assessCapability(measureDesign(of, evaluation), rows)
      .filter(({ parameter: { key } }) => rows.some((row) => row.parameter === key))
      .map(({ values }) => values.map(({ verdict }) => verdict))
  // Stiffeners stand before tolerances in the dictionary.
  expect(verdictsOf(design)).toEqual([['comfortable'], ['outside']])
  const silent = structuredClone(design)
  silent.brief.tolerances.outlineMm = null
  expect(verdictsOf(silent)).toEqual([['comfortable'], []])
})
