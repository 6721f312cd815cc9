import { describe, expect, it } from 'vitest'
import {
  computeCapability,
  computeThicknessRange,
  simulateThickness,
  standardDeviationFromToleranceUm,
  type ThicknessContributor,
} from '@/lib/engine/thickness'
import { checkTopic, expectNear, expectValue, input, listOf } from '../check-values'

function symmetric(tolerances: readonly number[], nominalUm = 100): ThicknessContributor[] {
  return tolerances.map((tolerance, index) => ({
    id: `layer-${index}`,
    nominalUm,
    minusUm: tolerance,
    plusUm: tolerance,
    spread: 'normal',
  }))
}

/** Half widths about the middle: worst case and root sum square. */
function halfWidths(tolerances: readonly number[], inflationFactor = 1): { worst: number; rss: number } {
  const range = computeThicknessRange(symmetric(tolerances), { inflationFactor })
  return {
    worst: (range.worstCase.maxUm - range.worstCase.minUm) / 2,
    rss: (range.rootSumSquare.maxUm - range.rootSumSquare.minUm) / 2,
  }
}

checkTopic('12 tolerance statistics', [
  [
    /^tol-stack/,
    (check) => {
      const { worst, rss } = halfWidths(listOf(check.inputs, 'tolerancesUm'))
      expectValue(check, 'worstCaseUm', worst)
      expectValue(check, 'rssUm', rss)
    },
  ],
  [
    /^tol-3-4-5/,
    (check) => {
      const { worst, rss } = halfWidths(listOf(check.inputs, 'tolerances'))
      expectValue(check, 'worstCase', worst)
      expectValue(check, 'rss', rss)
    },
  ],
  [
    /^tol-equal-n/,
    (check) => {
      const { worst, rss } = halfWidths(new Array<number>(input(check, 'n')).fill(input(check, 'tolerance')))
      expectValue(check, 'worstCase', worst)
      expectValue(check, 'rss', rss)
    },
  ],
  [
    // 1.5 times 5 is 7.5, but the worst case is 7: the engine caps it there.
    /^tol-bender/,
    (check) => {
      const tolerances = listOf(check.inputs, 'tolerances')
      expectValue(check, 'inflatedRss', halfWidths(tolerances).rss * input(check, 'factor'))
      expect(halfWidths(tolerances, input(check, 'factor')).rss).toBe(7)
    },
  ],
  [
    /^cpk-\d/,
    (check) => {
      const cpk = input(check, 'cpk')
      const centred = computeCapability({ meanUm: 0, standardDeviationUm: 1, lowerUm: -3 * cpk, upperUm: 3 * cpk })
      expectNear(centred.cpk, cpk, { rel: 1e-12 })
      expectValue(check, 'twoSidedCentredPpm', centred.ppmTotal)
      expectValue(check, 'oneSidedPpm', centred.ppmAbove)
    },
  ],
  [
    /^cpk-shift/,
    (check) => {
      const cp = input(check, 'cp')
      const shifted = computeCapability({
        meanUm: input(check, 'shiftSigma'),
        standardDeviationUm: 1,
        lowerUm: -3 * cp,
        upperUm: 3 * cp,
      })
      expectNear(shifted.cp, cp, { rel: 1e-12 })
      expectValue(check, 'cpk', shifted.cpk)
      expectValue(check, 'ppm', shifted.ppmAbove)
    },
  ],
  [
    /^cpk-def/,
    (check) => {
      const capability = computeCapability({
        meanUm: 1000 * input(check, 'mean'),
        standardDeviationUm: 1000 * input(check, 'sigma'),
        lowerUm: 1000 * input(check, 'lower'),
        upperUm: 1000 * input(check, 'upper'),
      })
      expectValue(check, 'cp', capability.cp)
      expectValue(check, 'cpk', capability.cpk)
    },
  ],
  [
    /^rss-sigma-to-tol/,
    (check) =>
      expectValue(
        check,
        'impliedSigma',
        standardDeviationFromToleranceUm(1000 * input(check, 'tolerance'), input(check, 'cpk')) / 1000,
      ),
  ],
])

describe('drawn circuits against closed forms [exact mathematics: variance of a sum]', () => {
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
