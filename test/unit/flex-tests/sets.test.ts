import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findLibraryMaterial } from '@/lib/engine'
import { type FlexTestRow, findFlexTestIssues, fitFlexTestSets, flexTestRowSchema } from '@/lib/engine/flex-tests'
import { computeMedianLife, fitWeibull } from '@/lib/engine/life'
import { CYCLES, livesOf, makeRows, WORKSPACE } from './rows'

const setOf = (rows: readonly FlexTestRow[]) => {
  const [set] = fitFlexTestSets(rows, WORKSPACE)
  if (set === undefined) throw new Error('no set')
  return set
}
const lives = fc.uniqueArray(fc.integer({ min: 500, max: 60_000 }), { minLength: 4, maxLength: 15 })

describe('a set of flex tests', () => {
  it('gives the slope and life of the fit of its specimens', () => {
    const set = setOf(makeRows())
    const reading = fitWeibull(CYCLES.map((cycles) => ({ cycles, hasSurvived: cycles === 90_000 })))
    if (!reading.ok) throw new Error(reading.because)
    expect(set.fit?.slope).toEqual(reading.fit.slope)
    expect(set.fit?.lives[0]?.medianCycles).toEqual(reading.fit.medianCycles)
    expect(set.tested).toMatchObject({ specimens: 12, failures: 9, cycles: { low: 21_000, high: 90_000 } })
  })

  it('scales its life with the cycles and keeps its slope', () => {
    fc.assert(
      fc.property(lives, fc.integer({ min: 2, max: 40 }), (cycles, factor) => {
        const [one, other] = [
          setOf(makeRows({ result: 'failed' }, cycles)),
          setOf(
            makeRows(
              { result: 'failed' },
              cycles.map((each) => each * factor),
            ),
          ),
        ]
        const [a, b] = [
          one.fit?.lives[0]?.characteristicCycles.value ?? 0,
          other.fit?.lives[0]?.characteristicCycles.value ?? 0,
        ]
        expect(b / a / factor).toBeCloseTo(1, 6)
        expect((other.fit?.slope.value ?? 0) / (one.fit?.slope.value ?? 1)).toBeCloseTo(1, 6)
      }),
      { numRuns: 40 },
    )
  })

  it('finds the slope that radii share between those of each radius', () => {
    const wide = makeRows({ insideRadiusMm: 8, strainRangePct: 0.2, specimen: '' }, [52_000, 61_000, 70_000, 88_000])
    const both = setOf([...makeRows(), ...wide])
    const slopes = [setOf(makeRows()), setOf(wide)].map(({ fit }) => fit?.slope.value ?? 0).sort((a, b) => a - b)
    expect(both.fit?.slope.value).toBeGreaterThan(slopes[0] ?? 0)
    expect(both.fit?.slope.value).toBeLessThan(slopes[1] ?? 0)
    expect(both.conditions.map(({ insideRadiusMm }) => insideRadiusMm)).toEqual([4, 8])
    expect(both.tested?.radiusRatio?.high).toBeCloseTo(8000 / 93, 9)
    // More specimens narrow the bounds.
    const width = ({ low, high }: { low: number | null; high: number | null }) => (high ?? 0) / (low ?? 1)
    expect(width(both.fit?.slope ?? { low: 1, high: 1e9 })).toBeLessThan(
      width(setOf(makeRows()).fit?.slope ?? { low: 1, high: 0 }),
    )
  })

  it('gives a ductility with which the relation has the median life that was tested', () => {
    const set = setOf(makeRows({ strainRangePct: 0.233 }))
    const foil = findLibraryMaterial('copper-ra')
    const median = set.fit?.lives[0]?.medianCycles
    if (foil?.foil == null || median === undefined || set.tested?.fatigueDuctility == null)
      throw new Error('no ductility')
    const { value, low, high } = set.tested.fatigueDuctility
    for (const [ductility, cycles] of [
      [value, median.value],
      [low, median.low],
      [high, median.high],
    ] as const) {
      const life = computeMedianLife(
        {
          fatigueDuctility: ductility,
          tensileStrengthMpa: foil.foil.tensileStrengthMpa.value,
          modulusGpa: foil.modulusGpa.value,
        },
        0.00233,
      )
      expect(life.cycles / (cycles ?? 0)).toBeCloseTo(1, 6)
    }
  })

  it('takes the strain of bare foil from its mandrel, one way half of to and fro', () => {
    const bare = { kind: 'bare-foil', thicknessUm: 18, insideRadiusMm: 1, strainRangePct: null } as const
    const cycles = [300, 340, 380, 430, 520]
    const reversed = setOf(makeRows({ ...bare, motion: 'reversed' }, cycles))
    // 2 t / (2 R + t), IPC-TM-650 2.4.2.1 (from memory), worked by hand.
    expect(reversed.conditions[0]?.strainRangePct).toBeCloseTo((100 * 2 * 18) / 2018, 9)
    expect(setOf(makeRows({ ...bare }, cycles)).conditions[0]?.strainRangePct).toBeCloseTo((100 * 18) / 2018, 9)
    expect(reversed.tested).toMatchObject({ slope: null, radiusRatio: null })
    expect(reversed.tested?.fatigueDuctility?.value).toBeGreaterThan(0)
  })

  it.each<[string, FlexTestRow[], string]>([
    ['all survived', makeRows({ result: 'survived' }), 'no specimen failed'],
    ['two failed', makeRows({}, [21_000, 30_000, 90_000, 90_000]), 'only 2 specimens failed'],
    ['one specimen', makeRows({}, [21_000]), 'only one specimen failed'],
    [
      'all at one count',
      makeRows({}, [30_000, 30_000, 30_000, 30_000]),
      'the inspection interval is wider than the scatter',
    ],
  ])('says why results cannot use it: %s', (_, rows, because) => {
    const set = setOf(rows)
    expect(set.tested).toBeNull()
    expect(set.because).toContain(because)
    expect(livesOf(rows)).toEqual([])
  })

  it('gives no ductility beyond 1e5 cycles or without a strain, and says so', () => {
    const long = setOf(makeRows({ result: 'failed' }, [210_000, 340_000, 470_000, 900_000]))
    expect(long.tested?.fatigueDuctility).toBeNull()
    expect(long.noDuctilityBecause).toMatch(/^no ductility: the median life.* 100 000 cycles/)
    expect(long.tested?.slope).not.toBeNull()
    // One of two radii gives none: the set says at which.
    const flatter = { insideRadiusMm: 8, strainRangePct: 0.2, result: 'failed' as const }
    const mixed = setOf([...makeRows(), ...makeRows(flatter, [210_000, 340_000, 470_000, 900_000])])
    expect(mixed.conditions.map(({ fatigueDuctility }) => fatigueDuctility === null)).toEqual([false, true])
    expect(mixed.noDuctilityBecause).toContain('no ductility for the set: at inside radius 8 mm the median life')
    const unstated = setOf(makeRows({ strainRangePct: null }))
    expect(unstated.noDuctilityBecause).toContain('strain range of the copper is not stated')
    // A strain far above what any ductility up to 5 would survive.
    expect(setOf(makeRows({ strainRangePct: 60 })).tested?.fatigueDuctility).toBeNull()
  })

  it('leaves a radius out where too few failed, and says which', () => {
    const survivors = makeRows({ insideRadiusMm: 9, result: 'survived' }, [90_000, 90_000])
    const set = setOf([...makeRows(), ...survivors])
    expect(set.conditions.map(({ leftOut }) => leftOut)).toEqual([null, 'no specimen failed'])
    // Radii at which nobody knows the life are not part of the tested range.
    expect(set.tested?.radiusRatio?.high).toBeCloseTo(4000 / 93, 9)
    expect(set.tested?.specimens).toBe(12)
  })

  it('bears huge and tiny figures without a figure that is none', () => {
    for (const cycles of [
      [1, 2, 3],
      [1e12, 9e11, 8e11],
      [1, 1e6, 1e12],
    ]) {
      const set = setOf(makeRows({ result: 'failed' }, cycles))
      for (const value of [set.fit?.slope.value, set.fit?.lives[0]?.medianCycles.value]) {
        expect(Number.isFinite(value)).toBe(true)
        expect(value).toBeGreaterThan(0)
      }
    }
  })
})

describe('rows of flex tests', () => {
  it.each<[string, Partial<FlexTestRow>, string]>([
    ['zero cycles', { cycles: 0 }, 'cycles'],
    ['negative cycles', { cycles: -5 }, 'cycles'],
    ['a foil of no library', { foil: 'copper-none' }, 'foil'],
    ['a film as a foil', { foil: 'pi-coverlay' }, 'foil'],
    ['no set', { set: ' ' }, 'set'],
    ['no radius', { insideRadiusMm: 0 }, 'insideRadiusMm'],
    ['a day that is none', { testedOn: '2026-02-30' }, 'testedOn'],
  ])('refuse %s by field', (_, change, field) => {
    const [row] = makeRows(change)
    const parsed = flexTestRowSchema.safeParse(row)
    expect(parsed.error?.issues[0]?.path).toEqual([field])
  })

  it('refuse a specimen that stands twice, and one that differs from its set', () => {
    const [a, b, c] = makeRows()
    if (a === undefined || b === undefined || c === undefined) throw new Error('no rows')
    const places = (rows: readonly FlexTestRow[]) => findFlexTestIssues(rows).map(({ row, field }) => [row, field])
    expect(places([a, b, c])).toEqual([])
    expect(places([a, { ...b, specimen: a.specimen.toLowerCase() }])).toEqual([[1, 'specimen']])
    expect(places([a, { ...b, foilUm: 12 }, { ...c, motion: 'reversed' }])).toEqual([
      [1, 'foilUm'],
      [2, 'motion'],
    ])
    expect(places([a, { ...b, thicknessUm: 120 }])).toEqual([[1, 'thicknessUm']])
    expect(places([a, { ...b, thicknessUm: 120, insideRadiusMm: 5 }])).toEqual([])
    const radii = (count: number) =>
      Array.from({ length: count }, (_, at) => ({ ...a, specimen: `${at}`, insideRadiusMm: at + 1 }))
    expect(places(radii(8))).toEqual([])
    expect(places(radii(9))).toEqual([[8, 'insideRadiusMm']])
    expect(places([{ ...a, thicknessUm: 10 }])).toEqual([[0, 'thicknessUm']])
    expect(places([{ ...a, kind: 'bare-foil' }])).toEqual([[0, 'strainRangePct']])
  })
})
