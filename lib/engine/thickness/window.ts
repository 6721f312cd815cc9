import { requireNumber } from '../numerics'
import type { Range } from './tolerance-stack'

export interface WindowMargin {
  /** Distance of the thinnest part above the lower limit; negative when below it. */
  lowerMarginUm: number
  /** Distance of the thickest part below the upper limit; negative when above it. */
  upperMarginUm: number
  /** The smaller of both: what decides. */
  marginUm: number
  /** The same at nominal thickness. */
  nominalMarginUm: number
  /** Thickness to add (or, if negative, to take away) at nominal to stand in the middle of the window. */
  toMiddleUm: number
}

/**
 * Thickness of a finger zone against the window that its connector accepts.
 *
 * @param nominalUm, rangeUm  thickness at nominal, and its worst-case or root-sum-square range
 * @param windowUm            the connector's limits, minUm < maxUm
 * @throws  RangeError if a number is not finite, or a range runs backwards
 * Source   SOURCES.exactArithmetic; the window comes from the connector's maker
 */
export function computeWindowMargin({
  nominalUm,
  rangeUm,
  windowUm,
}: {
  nominalUm: number
  rangeUm: Range
  windowUm: Range
}): WindowMargin {
  requireNumber('nominalUm', nominalUm, { atLeast: 0, unit: 'um' })
  requireNumber('rangeUm.minUm', rangeUm.minUm, {})
  requireNumber('rangeUm.maxUm', rangeUm.maxUm, { atLeast: rangeUm.minUm, unit: 'um' })
  requireNumber('windowUm.minUm', windowUm.minUm, {})
  requireNumber('windowUm.maxUm', windowUm.maxUm, { above: windowUm.minUm, unit: 'um' })
  const lowerMarginUm = rangeUm.minUm - windowUm.minUm
  const upperMarginUm = windowUm.maxUm - rangeUm.maxUm
  return {
    lowerMarginUm,
    upperMarginUm,
    marginUm: Math.min(lowerMarginUm, upperMarginUm),
    nominalMarginUm: Math.min(nominalUm - windowUm.minUm, windowUm.maxUm - nominalUm),
    toMiddleUm: (windowUm.minUm + windowUm.maxUm) / 2 - nominalUm,
  }
}
