import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  computeAdhesiveFlow,
  computeThicknessRange,
  findMinimumFinishedCopper,
  simulateThickness,
  type ThicknessContributor,
} from '@/lib/engine/thickness'
import { between } from './arbitrary-layers'
import { holds, PROPERTY_TIMEOUT_MS } from './seed'

const contributors: fc.Arbitrary<ThicknessContributor[]> = fc
  .array(
    fc.record({
      nominalUm: between(5, 200),
      minus: between(0, 0.5),
      plusUm: between(0, 40),
      spread: fc.constantFrom('normal' as const, 'uniform' as const),
      sensitivity: fc.constantFrom(1, 1, 1, -1),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((list) =>
    list.map(({ minus, ...each }, index) => ({ id: `layer-${index}`, ...each, minusUm: minus * each.nominalUm })),
  )

describe('range of thickness', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('puts root sum square inside the worst case, both about the nominal', () => {
    holds(
      fc.property(contributors, between(1, 3), (list, inflationFactor) => {
        const { worstCase, rootSumSquare, nominalUm } = computeThicknessRange(list, { inflationFactor })
        const roundingUm = 1e-9
        expect(rootSumSquare.minUm).toBeGreaterThanOrEqual(worstCase.minUm - roundingUm)
        expect(rootSumSquare.maxUm).toBeLessThanOrEqual(worstCase.maxUm + roundingUm)
        expect(nominalUm).toBeGreaterThanOrEqual(worstCase.minUm - roundingUm)
        expect(nominalUm).toBeLessThanOrEqual(worstCase.maxUm + roundingUm)
      }),
    )
  })

  it('shares its variance out whole, or not at all where nothing varies', () => {
    holds(
      fc.property(contributors, (list) => {
        const total = (shares: { shareFraction: number }[]) => shares.reduce((sum, each) => sum + each.shareFraction, 0)
        const { varianceShares, standardDeviationUm } = computeThicknessRange(list)
        expect(total(varianceShares)).toBeCloseTo(standardDeviationUm === 0 ? 0 : 1, 9)
        const fixed = list.map((each) => ({ ...each, minusUm: 0, plusUm: 0 }))
        expect(total(computeThicknessRange(fixed).varianceShares)).toBe(0)
      }),
    )
  })

  it('counts a loss against the foil that it comes from', () => {
    const { nominalUm, worstCase } = computeThicknessRange([
      { id: 'foil', nominalUm: 18, minusUm: 1.8, plusUm: 1.8, spread: 'normal' },
      { id: 'loss', nominalUm: 3, minusUm: 1, plusUm: 1, spread: 'normal', sensitivity: -1 },
    ])
    expect(nominalUm).toBe(15)
    expect(worstCase.minUm).toBeCloseTo(12.2, 12)
    expect(worstCase.maxUm).toBeCloseTo(17.8, 12)
  })
})

describe('simulated thickness', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  const film: ThicknessContributor = { id: 'film', nominalUm: 50, minusUm: 3, plusUm: 6, spread: 'normal' }
  const adhesive: ThicknessContributor = { id: 'adhesive', nominalUm: 25, minusUm: 5, plusUm: 5, spread: 'uniform' }

  it('is the same for the same seed, another for another, and near the same in what it says', () => {
    const run = (seed: number) => simulateThickness({ contributors: [film, adhesive], seed, draws: 20_000 })
    expect(run(4)).toEqual(run(4))
    expect(run(4).meanUm).not.toBe(run(5).meanUm)
    expect(Math.abs(run(4).meanUm - run(5).meanUm)).toBeLessThan(0.2)
  })

  it('keeps uniform draws inside their limits', () => {
    const { minUm, maxUm } = simulateThickness({ contributors: [adhesive], seed: 1, draws: 20_000 })
    expect(minUm).toBeGreaterThanOrEqual(20)
    expect(maxUm).toBeLessThanOrEqual(30)
    expect(maxUm - minUm).toBeGreaterThan(9.9)
  })

  it('orders its percentiles and counts what lies outside a window', () => {
    const { percentilesUm, outsideWindow, histogram, minUm, maxUm } = simulateThickness({
      contributors: [adhesive],
      seed: 1,
      draws: 50_000,
      bins: 10,
      windowUm: { minUm: 21, maxUm: 28 },
    })
    expect(percentilesUm.p0135).toBeLessThan(percentilesUm.p50)
    expect(percentilesUm.p50).toBeLessThan(percentilesUm.p99865)
    expect(outsideWindow?.belowFraction).toBeCloseTo(0.1, 2)
    expect(outsideWindow?.aboveFraction).toBeCloseTo(0.2, 2)
    expect(histogram.edgesUm[0]).toBe(minUm)
    expect(histogram.edgesUm.at(-1)).toBeCloseTo(maxUm, 9)
    for (const count of histogram.counts) expect(Math.abs(count / 5000 - 1)).toBeLessThan(0.07)
  })

  it('draws nothing where nothing varies', () => {
    const fixed = { ...film, minusUm: 0, plusUm: 0 }
    const { standardDeviationUm, meanUm, histogram, varianceShares } = simulateThickness({
      contributors: [fixed],
      seed: 1,
      draws: 1000,
    })
    expect({ standardDeviationUm, meanUm }).toEqual({ standardDeviationUm: 0, meanUm: 50 })
    expect(histogram.counts[0]).toBe(1000)
    expect(varianceShares).toEqual([{ id: 'film', shareFraction: 0 }])
  })
})

describe('adhesive', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('keeps its volume: what fills gaps and what stands above add to what there was', () => {
    holds(
      fc.property(
        between(5, 100),
        between(5, 100),
        between(0, 1),
        between(0, 0.5),
        (adhesiveThicknessUm, conductorThicknessUm, coverageFraction, squeezeOutFraction) => {
          const flow = computeAdhesiveFlow({
            adhesiveThicknessUm,
            conductorThicknessUm,
            coverageFraction,
            squeezeOutFraction,
            requiredOverConductorUm: 0,
          })
          expect(flow.gapFillUm + flow.overConductorUm).toBeCloseTo(adhesiveThicknessUm * (1 - squeezeOutFraction), 9)
          expect(flow.encapsulates).toBe(flow.encapsulationMarginUm >= 0)
          expect(flow.gapFilledFraction).toBeLessThanOrEqual(1)
          if (flow.gapFilledFraction < 1 - 1e-12) expect(flow.encapsulates).toBe(false)
        },
      ),
    )
  })

  it('stays as it is over a solid plane', () => {
    const flow = computeAdhesiveFlow({
      adhesiveThicknessUm: 25,
      conductorThicknessUm: 35,
      coverageFraction: 1,
      requiredOverConductorUm: 10,
    })
    expect(flow).toMatchObject({ overConductorUm: 25, gapFilledFraction: 1, encapsulationMarginUm: 15 })
  })
})

describe('tables', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('no minimum is invented for a weight without a row', () => {
    expect(findMinimumFinishedCopper({ weightOzPerFt2: 0.75, location: 'internal', productClass: 2 })).toBeNull()
  })
})
