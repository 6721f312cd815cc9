import { normalUpperTailFraction, requireNumber } from '../numerics'

const PPM = 1e6

export interface ProcessCapability {
  cp: number
  cpk: number
  ppmBelow: number
  ppmAbove: number
  ppmTotal: number
}

/**
 * Capability of a process against two limits, and the parts per million that fall outside.
 *
 * Model    Cp = (U - L) / 6 sigma, Cpk = min(U - mu, mu - L) / 3 sigma, ppm from the normal tails
 * Holds    normal spread. Cpk 1.33 and 4/3 differ (66.1 and 63.3 ppm): say which is meant.
 * @param meanUm, standardDeviationUm  standardDeviationUm > 0; the mean may lie outside the limits (Cpk negative)
 * @param lowerUm, upperUm             lowerUm < upperUm
 * @throws  RangeError if an argument breaks those ranges
 * Source   SOURCES.processCapability, tails SOURCES.dlmf; check values in test/standards/tolerance
 */
export function computeCapability({
  meanUm,
  standardDeviationUm,
  lowerUm,
  upperUm,
}: {
  meanUm: number
  standardDeviationUm: number
  lowerUm: number
  upperUm: number
}): ProcessCapability {
  requireNumber('meanUm', meanUm, {})
  requireNumber('standardDeviationUm', standardDeviationUm, { above: 0, unit: 'um' })
  requireNumber('lowerUm', lowerUm, {})
  requireNumber('upperUm', upperUm, { above: lowerUm, unit: 'um' })
  const belowSigma = (meanUm - lowerUm) / standardDeviationUm
  const aboveSigma = (upperUm - meanUm) / standardDeviationUm
  const ppmBelow = PPM * normalUpperTailFraction(belowSigma)
  const ppmAbove = PPM * normalUpperTailFraction(aboveSigma)
  return {
    cp: (belowSigma + aboveSigma) / 6,
    cpk: Math.min(belowSigma, aboveSigma) / 3,
    ppmBelow,
    ppmAbove,
    ppmTotal: ppmBelow + ppmAbove,
  }
}
