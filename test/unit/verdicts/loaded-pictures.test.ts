import { parseHTML } from 'linkedom'
import { describe, expect, test } from 'vitest'
import { drawLifePlot, drawTornadoPlot, PRINT_PALETTE } from '@/lib/drawing'
import { type Bend, type BendResult, computeTornado, type Design, evaluate } from '@/lib/engine'
import { makeOneBend } from './one-bend'

const LOADED: readonly [string, Partial<Bend>, RegExp][] = [
  ['a flatter end by radius', { flexesFromRadiusMm: 20 }, /with the flatter end of the motion/],
  ['a flatter end by angle', { flexesFromAngleDeg: 40 }, /with the flatter end of the motion/],
  ['a fold before', { foldedToRadiusMm: 1 }, /with the fold before/],
  ['a pull', { pullN: 2 }, /with the pull/],
  ['a twist', { twistDeg: 10, twistLengthMm: 40 }, /with the twist/],
  [
    'all of them',
    { flexesFromRadiusMm: 30, foldedToRadiusMm: 2, pullN: 1, twistDeg: 10, twistLengthMm: 40 },
    /with the flatter end of the motion, the fold before, the pull and the twist/,
  ],
]

const make = (bend: Partial<Bend>, more: Parameters<typeof makeOneBend>[0] = {}): Design =>
  makeOneBend({ insideRadiusMm: 8, requiredCycles: 2000, ...more, bends: [bend] })

function bendOf(design: Design): BendResult {
  const [bend] = evaluate(design).bends
  if (bend === undefined) throw new Error('no bend')
  return bend
}

const frame = () => ({
  document: parseHTML('<html><body></body></html>').document,
  palette: PRINT_PALETTE,
  widthPx: 600,
})

describe.each(LOADED)('life over radius with %s', (_, bend, says) => {
  const result = bendOf(make(bend))

  test('runs through the design, and each point is the verdict of a bend of that radius', () => {
    const own = result.lifeCurve.find(({ insideRadiusMm }) => insideRadiusMm === 8)
    expect(own?.survivalLifeCycles).toBe(result.survivalLifeCycles)
    expect(own?.medianLifeCycles).toBe(result.medianLifeCycles)
    expect(result.lifeCurve.length).toBeGreaterThan(10)
    for (const point of result.lifeCurve.filter((__, at) => at % 5 === 1)) {
      const at = bendOf(make({ ...bend, insideRadiusMm: point.insideRadiusMm }))
      expect(at.survivalLifeCycles).toBe(point.survivalLifeCycles)
      expect(at.medianLifeCycles).toBe(point.medianLifeCycles)
    }
  })

  test('grows with the radius, and its picture says what it counts', () => {
    const lives = result.lifeCurve.map(({ survivalLifeCycles }) => survivalLifeCycles)
    expect(lives).toEqual(lives.toSorted((a, b) => a - b))
    const picture = drawLifePlot(result, 8, { ...frame(), heightPx: 300 })
    expect(picture?.description).toMatch(new RegExp(says.source, 'i'))
    expect(picture?.table.caption).toMatch(says)
    expect(JSON.stringify(picture?.nodes)).not.toMatch(/NaN/)
  })
})

describe.each(LOADED)('tornado with %s', (_, bend, says) => {
  const design = make({ ...bend, radiusToleranceMm: 0.2 })
  const tornado = computeTornado(design, 'bend-0', 'foil')

  test('begins at the verdict, and each end is the verdict of the bend with that input there', () => {
    const result = bendOf(design)
    expect(tornado?.strainPct).toBe(result.peakStrainPct)
    expect(tornado?.survivalLifeCycles).toBe(result.survivalLifeCycles)
    const radius = tornado?.swings.find(({ kind }) => kind === 'radius')
    for (const [insideRadiusMm, strainPct, life] of [
      [7.8, radius?.strainAtLowPct, radius?.lifeAtLowCycles],
      [8.2, radius?.strainAtHighPct, radius?.lifeAtHighCycles],
    ] as const) {
      const moved = bendOf(make({ ...bend, insideRadiusMm: insideRadiusMm ?? Number.NaN }))
      expect(strainPct).toBeCloseTo(moved.peakStrainPct ?? Number.NaN, 10)
      expect((life ?? 0) / (moved.survivalLifeCycles ?? 1)).toBeCloseTo(1, 9)
    }
  })

  test('a thickness and the foil move it as they move the verdict', () => {
    const thick = make(bend, { copper: { thicknessUm: 18, tolerancePlusUm: 2, toleranceMinusUm: 2 } })
    const swing = computeTornado(thick, 'bend-0', 'foil')?.swings.find(
      ({ quantity, layerId }) => quantity === 'thicknessUm' && layerId === 'foil',
    )
    for (const [thicknessUm, strainPct, life] of [
      [16, swing?.strainAtLowPct, swing?.lifeAtLowCycles],
      [20, swing?.strainAtHighPct, swing?.lifeAtHighCycles],
    ] as const) {
      const moved = bendOf(make(bend, { copper: { thicknessUm } }))
      expect(strainPct).toBeCloseTo(moved.peakStrainPct ?? Number.NaN, 10)
      expect((life ?? 0) / (moved.survivalLifeCycles ?? 1)).toBeCloseTo(1, 9)
    }
    const strength = tornado?.swings.find(({ quantity }) => quantity === 'tensileStrengthMpa')
    expect(strength?.strainAtLowPct).toBe(strength?.strainAtHighPct)
    expect(strength?.lifeAtLowCycles).toBeLessThan(strength?.lifeAtHighCycles ?? 0)
  })

  test('the picture and its table say what is counted', () => {
    if (tornado === null) throw new Error('no tornado')
    const picture = drawTornadoPlot(tornado, { ...frame(), measure: 'life' })
    expect(picture?.description).toMatch(says)
    expect(picture?.table.caption).toMatch(says)
  })
})

describe('pictures of a bend that nobody can tell', () => {
  test.each<[string, Partial<Bend>]>([
    ['ends that contradict each other', { flexesFromRadiusMm: 7 }],
    ['a twist without its length', { twistDeg: 20 }],
    ['a pull that is beyond its model', { pullN: 500 }],
    ['a fold before that is too tight', { foldedToRadiusMm: 0.1 }],
  ])('%s: no curve', (_, bend) => {
    expect(bendOf(make(bend)).lifeCurve).toEqual([])
  })

  test.each<[string, Partial<Bend>]>([
    ['ends that contradict each other', { flexesFromRadiusMm: 7 }],
    ['a radius whose tolerance reaches the flatter end', { flexesFromRadiusMm: 8.1, radiusToleranceMm: 0.5 }],
    ['a pull that is beyond its model', { pullN: 500 }],
  ])('%s: no tornado', (_, bend) => {
    expect(computeTornado(make(bend), 'bend-0', 'foil')).toBeNull()
  })

  test('a bend from flat says nothing of states', () => {
    const picture = drawLifePlot(bendOf(make({})), 8, { ...frame(), heightPx: 300 })
    expect(picture?.description).not.toMatch(/worked out as/i)
    expect(computeTornado(make({}), 'bend-0', 'foil')?.counted).toBeNull()
  })
})
