import { createRandomStream, requireNumber } from '../numerics'
import { centreContributors, type Range, type ThicknessContributor } from './tolerance-stack'

export interface ThicknessSimulation {
  draws: number
  seed: number
  meanUm: number
  standardDeviationUm: number
  minUm: number
  maxUm: number
  /** The middle, and the points that leave 0.135 % of the draws outside on either side (three sigma if normal). */
  percentilesUm: { p0135: number; p50: number; p99865: number }
  /** `edgesUm` has one entry more than `counts`; bins are half open, the last one closed. */
  histogram: { edgesUm: number[]; counts: number[] }
  /** Covariance of each contributor with the total over the variance of the total; they add to 1. */
  varianceShares: { id: string; shareFraction: number }[]
  /** Share of draws outside the window asked about, or null if none was asked about. */
  outsideWindow: { belowFraction: number; aboveFraction: number } | null
}

const MAX_DRAWS = 1e6
const MAX_BINS = 500

/**
 * Thickness of many circuits drawn from the tolerances of their layers.
 *
 * Model    total = sum s_i x_i, x_i normal (limits at three standard deviations) or uniform between its limits
 * Holds    independent contributors. A normal draw may pass its limit (0.27 % of draws), as real parts do.
 * @param contributors  one or more, as for computeThicknessRange
 * @param draws         1000 to 1e6; 100,000 resolve the tails to about 0.01 % of parts
 * @param seed          integer 0 to 2^32 - 1; the same seed gives the same circuits
 * @param bins          1 to 500, equal bins from the least to the greatest draw
 * @param windowUm      optional limits, e.g. of a connector
 * @throws  RangeError if an argument breaks those ranges
 * Source   SOURCES.sfc32, SOURCES.marsagliaPolar; converges on computeThicknessRange (test/unit/engine)
 */
export function simulateThickness({
  contributors,
  draws = 100_000,
  seed,
  bins = 40,
  windowUm,
}: {
  contributors: readonly ThicknessContributor[]
  draws?: number
  seed: number
  bins?: number
  windowUm?: Range
}): ThicknessSimulation {
  requireWhole('draws', draws, 1000, MAX_DRAWS)
  requireWhole('bins', bins, 1, MAX_BINS)
  if (windowUm !== undefined) {
    requireNumber('windowUm.minUm', windowUm.minUm, {})
    requireNumber('windowUm.maxUm', windowUm.maxUm, { above: windowUm.minUm })
  }
  const centred = centreContributors(contributors)
  const random = createRandomStream(seed)
  let middleUm = 0
  for (const each of centred) middleUm += each.sensitivity * each.middleUm

  // Contributors that do not vary cost no draws. Deviations from the middle keep the sums free of cancellation.
  const varying = centred
    .map((each, place) => ({ ...each, place }))
    .filter((each) => each.halfWidthUm > 0 && each.sensitivity !== 0)
  const count = varying.length
  // Flat arrays: this loop makes over a million draws, and objects of mixed fields would take twice as long.
  const isNormal = Uint8Array.from(varying, (each) => (each.spread === 'normal' ? 1 : 0))
  const scalesUm = Float64Array.from(
    varying,
    (each) => each.sensitivity * (each.spread === 'normal' ? each.standardDeviationUm : each.halfWidthUm),
  )
  const deviationsUm = new Float64Array(count)
  const sumsUm = new Float64Array(count)
  const sumsOfProductsUm2 = new Float64Array(count)
  const totals = new Float64Array(draws)
  let sumUm = 0
  let sumOfSquaresUm2 = 0
  for (let draw = 0; draw < draws; draw += 1) {
    let totalUm = 0
    for (let each = 0; each < count; each += 1) {
      const drawn = isNormal[each] === 1 ? random.nextNormal() : 2 * random.nextUniform() - 1
      const deviationUm = (scalesUm[each] ?? 0) * drawn
      deviationsUm[each] = deviationUm
      totalUm += deviationUm
    }
    for (let each = 0; each < count; each += 1) {
      const deviationUm = deviationsUm[each] ?? 0
      sumsUm[each] = (sumsUm[each] ?? 0) + deviationUm
      sumsOfProductsUm2[each] = (sumsOfProductsUm2[each] ?? 0) + deviationUm * totalUm
    }
    totals[draw] = totalUm
    sumUm += totalUm
    sumOfSquaresUm2 += totalUm * totalUm
  }

  const meanDeviationUm = sumUm / draws
  const scatterUm2 = Math.max(0, sumOfSquaresUm2 - sumUm * meanDeviationUm)
  // By place, not by id: foil and plating of one layer are two contributors with the layer's id.
  const shareByPlace = new Map(
    varying.map(({ place }, each) => {
      const covarianceUm2 = (sumsOfProductsUm2[each] ?? 0) - (sumsUm[each] ?? 0) * meanDeviationUm
      return [place, scatterUm2 === 0 ? 0 : covarianceUm2 / scatterUm2]
    }),
  )

  const sorted = totals.map((deviationUm) => middleUm + deviationUm).sort()
  const at = (fraction: number): number => sorted[Math.min(draws - 1, Math.floor(fraction * draws))] ?? middleUm
  return {
    draws,
    seed,
    meanUm: middleUm + meanDeviationUm,
    standardDeviationUm: Math.sqrt(scatterUm2 / (draws - 1)),
    minUm: at(0),
    maxUm: at(1),
    percentilesUm: { p0135: at(0.00135), p50: at(0.5), p99865: at(0.99865) },
    histogram: countBins(sorted, bins, at(0), at(1)),
    varianceShares: centred.map(({ id }, place) => ({ id, shareFraction: shareByPlace.get(place) ?? 0 })),
    outsideWindow:
      windowUm === undefined
        ? null
        : {
            belowFraction: countBelow(sorted, windowUm.minUm) / draws,
            aboveFraction: countAbove(sorted, windowUm.maxUm) / draws,
          },
  }
}

function requireWhole(name: string, value: number, atLeast: number, atMost: number): void {
  requireNumber(name, value, { atLeast, atMost })
  if (!Number.isInteger(value)) throw new RangeError(`${name} must be a whole number; found ${value}`)
}

function countBins(
  sorted: Float64Array,
  bins: number,
  minUm: number,
  maxUm: number,
): { edgesUm: number[]; counts: number[] } {
  // When nothing varies all draws fall into one bin of no width, which no chart can draw: give it 1 um.
  const widthUm = maxUm > minUm ? (maxUm - minUm) / bins : 1 / bins
  const counts = new Array<number>(bins).fill(0)
  for (const value of sorted) {
    const bin = Math.min(bins - 1, Math.floor((value - minUm) / widthUm))
    counts[bin] = (counts[bin] ?? 0) + 1
  }
  return { edgesUm: Array.from({ length: bins + 1 }, (_, edge) => minUm + edge * widthUm), counts }
}

function countBelow(sorted: Float64Array, limitUm: number): number {
  let count = 0
  for (const value of sorted) {
    if (value >= limitUm) break
    count += 1
  }
  return count
}

function countAbove(sorted: Float64Array, limitUm: number): number {
  let count = 0
  for (const value of sorted) if (value > limitUm) count += 1
  return count
}
