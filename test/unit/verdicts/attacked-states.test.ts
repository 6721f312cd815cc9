import { describe, expect, it, test } from 'vitest'
import { type Bend, type BendResult, type Design, evaluate, parseDesign } from '@/lib/engine'
import { fitFlexTestSets } from '@/lib/engine/flex-tests'
import { CYCLES, livesOf, makeRows, WORKSPACE } from '../flex-tests/rows'
import { listVerdicts, makeOneBend } from './one-bend'

// What somebody could state of a bend's states and loads, held against sums that are worked out here by themselves.

const bendOf = (bend: Partial<Bend>, testedLives: ReturnType<typeof livesOf> = []): BendResult => {
  const [result] = evaluate(makeOneBend({ bends: [bend] }), { testedLives }).bends
  if (result === undefined) throw new Error('no bend')
  return result
}
/** So flat that nothing yields: elastic strain is depth from the axis over the radius of the axis. */
const FLAT = { insideRadiusMm: 60, requiredCycles: 10 } as const
const RANK = ['meets', 'not-applicable', 'thin-margin', 'not-computed', 'cannot-tell', 'fails']
const worst = (design: Design, item: string) =>
  Math.max(...listVerdicts(design, item).map((verdict) => RANK.indexOf(verdict)))

describe('a motion between two ends', () => {
  it.each([61, 80, 120, 600])('from %f mm strains by the difference of the curvatures', (flexesFromRadiusMm) => {
    const [flat, swung] = [bendOf(FLAT), bendOf({ ...FLAT, flexesFromRadiusMm })]
    const axisMm = (flat.leaves[0]?.neutralAxisDepthUm ?? Number.NaN) / 1000
    // Exact geometry: curvature of the axis at either end.
    const share = 1 - (FLAT.insideRadiusMm + axisMm) / (flexesFromRadiusMm + axisMm)
    expect((swung.peakStrainPct ?? 0) / (flat.peakStrainPct ?? 0)).toBeCloseTo(share, 3)
  })

  it('comes to that from flat as its flatter end becomes flat, by radius and by angle', () => {
    const flat = bendOf(FLAT)
    for (const state of [{ flexesFromRadiusMm: 1e6 }, { flexesFromAngleDeg: 1e-6 }]) {
      expect(bendOf({ ...FLAT, ...state }).peakStrainPct).toBeCloseTo(flat.peakStrainPct ?? Number.NaN, 5)
    }
  })

  it('is never kinder for a fold that was made before, tighter or flatter than the motion', () => {
    for (const state of [{}, { flexesFromRadiusMm: 8 }]) {
      const alone = makeOneBend({ bends: [{ insideRadiusMm: 4, ...state }] })
      for (const foldedToRadiusMm of [2, 4, 6, 30, 900]) {
        const folded = makeOneBend({ bends: [{ insideRadiusMm: 4, ...state, foldedToRadiusMm }] })
        for (const item of ['bend-strain', 'fatigue-life', 'film-strain', 'damage-sum']) {
          expect(worst(folded, item), `${item} folded to ${foldedToRadiusMm}`).toBeGreaterThanOrEqual(
            worst(alone, item),
          )
        }
        const life = (design: Design) => evaluate(design).bends[0]?.survivalLifeCycles ?? 0
        expect(life(folded)).toBeLessThanOrEqual(life(alone) * (1 + 1e-9))
      }
    }
  })
})

describe('loads beside bending', () => {
  it('add up: with both no strain is below that with either', () => {
    const [pull, twist] = [{ pullN: 2 }, { twistDeg: 8, twistLengthMm: 30 }]
    const strain = (loads: Partial<Bend>) => bendOf({ ...FLAT, ...loads }).peakStrainPct ?? Number.NaN
    expect(strain({ ...pull, ...twist })).toBeGreaterThan(Math.max(strain(pull), strain(twist)))
    expect(Math.min(strain(pull), strain(twist))).toBeGreaterThan(strain({}))
  })

  it('of nothing change nothing', () => {
    const none = bendOf(FLAT)
    expect(bendOf({ ...FLAT, pullN: 0, twistDeg: 0, twistLengthMm: 30 }).peakStrainPct).toBe(none.peakStrainPct)
  })

  it('of a pull are at least the force over the stiffness of the part, and little more where it is flat', () => {
    // N over the sum of modulus x thickness x width: no constraint across, the softest that it can be. Moduli in GPa as the library has them.
    const design = makeOneBend({ bends: [{ ...FLAT, insideRadiusMm: 500, pullN: 2 }] })
    const result = evaluate(design)
    const [bend] = result.bends
    const without = evaluate(makeOneBend({ bends: [{ ...FLAT, insideRadiusMm: 500 }] })).bends[0]
    const added = (bend?.peakStrainPct ?? 0) - (without?.peakStrainPct ?? 0)
    const [copperGpa, copperUm, width] = [120, 18, 10]
    // Copper alone would stretch by more, copper twice as thick as all of the part by less.
    const most = (100 * 2) / (copperGpa * copperUm * width)
    expect(added).toBeLessThan(most * 1.05)
    expect(added).toBeGreaterThan(most / 2)
  })
})

const STATES = [
  'flexesFromRadiusMm',
  'flexesFromAngleDeg',
  'foldedToRadiusMm',
  'pullN',
  'twistDeg',
  'twistLengthMm',
  'faceGapMm',
] as const

test.each(STATES)('%s is refused by its path where it is no number that can be', (key) => {
  const bends = [{ flexesFromRadiusMm: 30 }]
  for (const value of [-1, Number.NaN, Number.POSITIVE_INFINITY, 1e300, '', '5', {}, []]) {
    const design = structuredClone(makeOneBend({ bends })) as unknown as { bends: Record<string, unknown>[] }
    Object.assign(design.bends[0] ?? {}, { [key]: value })
    const read = parseDesign(design)
    expect(read.ok, `${key} ${String(value)}`).toBe(false)
    if (!read.ok) expect(read.issues.map(({ path }) => path.join('.')).join()).toContain(key)
  }
})

describe('flex tests that say little', () => {
  const because = (rows: Parameters<typeof livesOf>[0]) => fitFlexTestSets(rows, WORKSPACE).map((set) => set.because)
  const survivalOf = (rows: Parameters<typeof livesOf>[0]) => bendOf({}, livesOf(rows)).survivalLifeCycles ?? Number.NaN

  it('all survived, or one specimen, give nothing that results use, and say why', () => {
    for (const rows of [makeRows({ result: 'survived' }), makeRows({}, [30_000]), makeRows({}, [30_000, 40_000])]) {
      expect(livesOf(rows)).toEqual([])
      expect(because(rows)[0]).toMatch(/no specimen failed|failed: it takes 3/)
    }
  })

  it('failed all at once give no slope, and lengthen no life', () => {
    const tied = makeRows(
      { result: 'failed' },
      Array.from({ length: 12 }, () => 40_000),
    )
    const tiny = makeRows(
      { result: 'failed' },
      Array.from({ length: 12 }, () => 2),
    )
    for (const rows of [tied, tiny]) {
      for (const each of livesOf(rows)) expect(JSON.stringify(each)).not.toMatch(/NaN|null,"high":null/)
      const life = survivalOf(rows)
      expect(Number.isFinite(life) || Number.isNaN(life)).toBe(true)
      expect(life).not.toBeGreaterThan((bendOf({}).survivalLifeCycles ?? 0) * 1.0001)
    }
  })

  it('scatter so widely that the slope is below 1: life at 99 % is far below what the default slope says', () => {
    const scattered = makeRows(
      { result: 'failed', strainRangePct: null },
      [40, 300, 1500, 5000, 14_000, 40_000, 120_000, 400_000],
    )
    const [tested] = livesOf(scattered)
    expect(tested?.slope?.value).toBeLessThan(1)
    const life = survivalOf(scattered)
    expect(Number.isNaN(life) || life < (bendOf({}).survivalLifeCycles ?? 0)).toBe(true)
  })

  it('at two radii with ties between them keep one slope, and each radius its own median', () => {
    const rows = [
      ...makeRows({}, CYCLES),
      ...makeRows({ insideRadiusMm: 8, strainRangePct: 0.2 }, CYCLES).map((row) => ({
        ...row,
        specimen: `${row.specimen} b`,
      })),
    ]
    const [set] = fitFlexTestSets(rows, WORKSPACE)
    expect(set?.fit?.lives).toHaveLength(2)
    const [one, other] = set?.fit?.lives ?? []
    expect(one?.medianCycles.value).toBeCloseTo(other?.medianCycles.value ?? Number.NaN, 3)
  })
})
