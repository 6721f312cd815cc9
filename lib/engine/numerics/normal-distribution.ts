import { requireNumber } from './require-number'

/** Beyond this the continued fraction converges in few terms; below it the series loses no digits that matter. */
const SERIES_LIMIT = 2
/** Enough for full double precision on either side of SERIES_LIMIT (each needs at most about 60). */
const MAX_TERMS = 200

/**
 * Share of a standard normal population above z.
 *
 * Model    Q(z) = erfc(z / sqrt 2) / 2
 * Holds    any finite z; relative accuracy about 1e-12 in the upper tail too, where 1 - CDF would lose all digits
 * @param z  in standard deviations
 * @returns fraction in [0, 1]
 * @throws  RangeError if z is not finite
 * Source   SOURCES.dlmf, 7.6.2 (series) and 7.9.1 (continued fraction)
 * @example normalUpperTailFraction(3) is about 0.00135
 */
export function normalUpperTailFraction(z: number): number {
  requireNumber('z', z, {})
  const x = Math.abs(z) / Math.SQRT2
  const upper = (x < SERIES_LIMIT ? 1 - erfBySeries(x) : erfcByFraction(x)) / 2
  return z >= 0 ? upper : 1 - upper
}

function erfBySeries(x: number): number {
  // erf x = (2/sqrt pi) e^(-x^2) sum_n 2^n x^(2n+1) / (1 3 5 ... (2n+1)): all terms positive.
  let term = x
  let sum = x
  for (let n = 1; n < MAX_TERMS && term > sum * Number.EPSILON; n += 1) {
    term *= (2 * x * x) / (2 * n + 1)
    sum += term
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum
}

function erfcByFraction(x: number): number {
  // sqrt(pi) e^(x^2) erfc x = 1/(x + (1/2)/(x + (2/2)/(x + (3/2)/(x + ...)))), evaluated from the far end.
  let tail = x
  for (let n = MAX_TERMS; n >= 1; n -= 1) tail = x + n / 2 / tail
  return Math.exp(-x * x) / (Math.sqrt(Math.PI) * tail)
}
