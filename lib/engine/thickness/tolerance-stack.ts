import { requireNumber } from '../numerics'

/** How a dimension spreads inside its tolerance: `normal` puts the limits at three standard deviations. */
export type Spread = 'normal' | 'uniform'

/** One dimension that adds to (or, with a negative sensitivity, takes from) the thickness of a zone. */
export interface ThicknessContributor {
  id: string
  nominalUm: number
  /** How far below nominal it may come out; not more than nominal. */
  minusUm: number
  /** How far above nominal it may come out. */
  plusUm: number
  spread: Spread
  /** Change of the total per change of this dimension; 1 for a layer, -1 for a processing loss. */
  sensitivity?: number
}

export interface Range {
  minUm: number
  maxUm: number
}

export interface ThicknessRange {
  nominalUm: number
  worstCase: Range
  /** Root sum square about the middle of the tolerances, never wider than the worst case. */
  rootSumSquare: Range & { middleUm: number; halfWidthUm: number }
  /** Standard deviation of the total when contributors are independent. */
  standardDeviationUm: number
  /** Each contributor's share of the variance; they add to 1, or are all 0 when nothing varies. */
  varianceShares: { id: string; shareFraction: number }[]
}

/** Tolerance limits of a normal contributor in standard deviations: the trade's reading of "capable". */
const NORMAL_LIMIT_SIGMA = 3
const MAX_DIMENSION_UM = 1e6
const MAX_SENSITIVITY = 1000

/** A contributor with its limits made symmetric about their middle. */
export interface CentredContributor {
  id: string
  middleUm: number
  halfWidthUm: number
  standardDeviationUm: number
  sensitivity: number
  spread: Spread
}

/** Checks contributors and moves each to the middle of its tolerance. Throws RangeError naming the list index. */
export function centreContributors(contributors: readonly ThicknessContributor[]): CentredContributor[] {
  if (contributors.length === 0) throw new RangeError('contributors must hold at least one dimension; found none')
  return contributors.map(({ id, nominalUm, minusUm, plusUm, spread, sensitivity = 1 }, index) => {
    const name = `contributors[${index}]`
    requireNumber(`${name}.nominalUm`, nominalUm, { atLeast: 0, atMost: MAX_DIMENSION_UM, unit: 'um' })
    requireNumber(`${name}.minusUm`, minusUm, { atLeast: 0, atMost: nominalUm, unit: 'um' })
    requireNumber(`${name}.plusUm`, plusUm, { atLeast: 0, atMost: MAX_DIMENSION_UM, unit: 'um' })
    requireNumber(`${name}.sensitivity`, sensitivity, { atLeast: -MAX_SENSITIVITY, atMost: MAX_SENSITIVITY })
    const halfWidthUm = (plusUm + minusUm) / 2
    return {
      id,
      middleUm: nominalUm + (plusUm - minusUm) / 2,
      halfWidthUm,
      standardDeviationUm: spread === 'normal' ? halfWidthUm / NORMAL_LIMIT_SIGMA : halfWidthUm / Math.sqrt(3),
      sensitivity,
      spread,
    }
  })
}

/**
 * Nominal thickness with its worst-case and root-sum-square range.
 *
 * Model    worst case sum |s_i| t_i; root sum square f sqrt(sum (s_i t_i)^2), t_i half the tolerance of contributor i
 * Holds    independent contributors. One-sided tolerances count from the middle of their limits, so that nominal
 *          need not lie in the middle of the range.
 * @param contributors     one or more; tolerances >= 0, minusUm not above nominalUm
 * @param inflationFactor  f, 1 (plain) to 3; 1.5 is a known choice for parts that are not centred
 * @throws  RangeError naming the contributor
 * Source   SOURCES.exactArithmetic; factor SOURCES.inflatedRootSumSquare; check values in test/standards/tolerance
 * @example two layers of +/- 3 and +/- 4 um: worst case +/- 7, root sum square +/- 5
 */
export function computeThicknessRange(
  contributors: readonly ThicknessContributor[],
  { inflationFactor = 1 }: { inflationFactor?: number } = {},
): ThicknessRange {
  requireNumber('inflationFactor', inflationFactor, { atLeast: 1, atMost: 3 })
  const centred = centreContributors(contributors)
  let nominalUm = 0
  for (const { nominalUm: each, sensitivity = 1 } of contributors) nominalUm += sensitivity * each
  let middleUm = 0
  let worstHalfUm = 0
  let sumOfSquares = 0
  let variance = 0
  for (const each of centred) {
    middleUm += each.sensitivity * each.middleUm
    worstHalfUm += Math.abs(each.sensitivity) * each.halfWidthUm
    sumOfSquares += (each.sensitivity * each.halfWidthUm) ** 2
    variance += (each.sensitivity * each.standardDeviationUm) ** 2
  }
  const halfWidthUm = Math.min(worstHalfUm, inflationFactor * Math.sqrt(sumOfSquares))
  return {
    nominalUm,
    worstCase: { minUm: middleUm - worstHalfUm, maxUm: middleUm + worstHalfUm },
    rootSumSquare: { minUm: middleUm - halfWidthUm, maxUm: middleUm + halfWidthUm, middleUm, halfWidthUm },
    standardDeviationUm: Math.sqrt(variance),
    varianceShares: centred.map(({ id, sensitivity, standardDeviationUm }) => ({
      id,
      shareFraction: variance === 0 ? 0 : (sensitivity * standardDeviationUm) ** 2 / variance,
    })),
  }
}
