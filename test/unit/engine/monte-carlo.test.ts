import { describe, expect, it } from 'vitest'
import {
  computeCapability,
  computeThicknessRange,
  simulateThickness,
  type ThicknessContributor,
} from '@/lib/engine/thickness'
import { expectNear } from '../../standards/check-values'

describe('drawn circuits against the closed forms', () => {
  const contributors: ThicknessContributor[] = [
    { id: 'film', nominalUm: 25, minusUm: 2.5, plusUm: 2.5, spread: 'normal' },
    { id: 'adhesive', nominalUm: 25, minusUm: 5, plusUm: 1, spread: 'uniform' },
    { id: 'copper', nominalUm: 18, minusUm: 1.8, plusUm: 1.8, spread: 'normal' },
    { id: 'loss', nominalUm: 2, minusUm: 1, plusUm: 1, spread: 'normal', sensitivity: -1 },
  ]
  const range = computeThicknessRange(contributors)
  const drawn = simulateThickness({ contributors, seed: 20, draws: 200_000, windowUm: { minUm: 60, maxUm: 68 } })

  it('mean, spread and shares agree within four standard errors', () => {
    expectNear(drawn.meanUm, range.rootSumSquare.middleUm, {
      abs: (4 * range.standardDeviationUm) / Math.sqrt(drawn.draws),
    })
    expectNear(drawn.standardDeviationUm, range.standardDeviationUm, { rel: 4 / Math.sqrt(2 * drawn.draws) })
    for (const [index, { id, shareFraction }] of range.varianceShares.entries()) {
      expect(drawn.varianceShares[index]?.id).toBe(id)
      expectNear(drawn.varianceShares[index]?.shareFraction ?? Number.NaN, shareFraction, { abs: 0.01 })
    }
  })

  it('shares add to one, and the histogram holds every draw', () => {
    const add = (sum: number, each: number) => sum + each
    expectNear(drawn.varianceShares.map((each) => each.shareFraction).reduce(add, 0), 1, { rel: 1e-9 })
    expect(drawn.histogram.counts.reduce(add, 0)).toBe(drawn.draws)
    expect(drawn.histogram.edgesUm).toHaveLength(drawn.histogram.counts.length + 1)
  })

  it('twelve normal layers have the tails that their capability says', () => {
    const twelve: ThicknessContributor[] = Array.from({ length: 12 }, (_, index) => ({
      id: `layer-${index}`,
      nominalUm: 20,
      minusUm: 3,
      plusUm: 3,
      spread: 'normal',
    }))
    const { standardDeviationUm } = computeThicknessRange(twelve)
    const windowUm = { minUm: 240 - 2 * standardDeviationUm, maxUm: 240 + 2 * standardDeviationUm }
    const { outsideWindow } = simulateThickness({ contributors: twelve, seed: 5, draws: 200_000, windowUm })
    const { ppmAbove } = computeCapability({
      meanUm: 240,
      standardDeviationUm,
      lowerUm: windowUm.minUm,
      upperUm: windowUm.maxUm,
    })
    // 4550 draws expected above: four standard errors are 6 %.
    expectNear(outsideWindow?.aboveFraction ?? Number.NaN, ppmAbove / 1e6, { rel: 0.06 })
    expectNear(outsideWindow?.belowFraction ?? Number.NaN, ppmAbove / 1e6, { rel: 0.06 })
  })
})
