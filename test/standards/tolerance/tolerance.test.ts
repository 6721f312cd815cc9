import { expect } from 'vitest'
import { computeCapability, computeThicknessRange, type ThicknessContributor } from '@/lib/engine/thickness'
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
    (check) => {
      // The deviation that the table gives is the one at which the tolerance has the stated Cpk.
      const toleranceUm = 1000 * input(check, 'tolerance')
      const { cpk } = computeCapability({
        meanUm: 0,
        standardDeviationUm: 1,
        lowerUm: -toleranceUm,
        upperUm: toleranceUm,
      })
      expectValue(check, 'impliedSigma', cpk / input(check, 'cpk') / 1000)
    },
  ],
])
