import { requireNumber } from './require-number'

export interface BracketedRoot {
  /** A point within `tolerance` of a root. */
  root: number
  /** How often the function was called, ends of the bracket included. */
  evaluations: number
}

/** k1 (b - a), k2 and n0 of the paper, section 4: the values its experiments recommend. */
const TRUNCATION_SCALE = 0.2
const TRUNCATION_POWER = 2
const EXTRA_STEPS = 1

/**
 * Root of a continuous function in a bracket, by interpolation, truncation and projection (ITP).
 *
 * Model    regula falsi pulled towards the midpoint and kept within a shrinking distance of it.
 * Holds    any continuous function with opposite signs at the ends; never more than one step beyond what
 *          bisection needs, whatever the function's shape, and usually far fewer.
 * @param f          finite on the whole bracket
 * @param low, high  bracket, low < high; f must differ in sign there (a zero at an end is returned as found)
 * @param tolerance  half-width of the final bracket, in the unit of the argument, > 0
 * @throws  RangeError when the bracket is empty, f is not finite in it, or does not change sign over it
 * Source   SOURCES.itp; termination bound from theorem 2.1 there
 */
export function findRoot(
  f: (x: number) => number,
  { low, high, tolerance }: { low: number; high: number; tolerance: number },
): BracketedRoot {
  requireNumber('low', low, {})
  requireNumber('high', high, { above: low })
  requireNumber('tolerance', tolerance, { above: 0 })
  let a = low
  let b = high
  let fa = requireNumber('f(low)', f(a), {})
  let fb = requireNumber('f(high)', f(b), {})
  if (fa === 0) return { root: a, evaluations: 2 }
  if (fb === 0) return { root: b, evaluations: 2 }
  if (fa > 0 === fb > 0) {
    throw new RangeError(`no sign change between low ${low} (value ${fa}) and high ${high} (value ${fb})`)
  }
  const risesSign = fb > 0 ? 1 : -1
  fa *= risesSign
  fb *= risesSign

  // A bracket narrower than one step between neighbouring floats cannot shrink: never ask for less.
  const halfWidth = Math.max(tolerance, 2 * Number.EPSILON * Math.max(Math.abs(a), Math.abs(b)))
  const maxSteps = Math.max(0, Math.ceil(Math.log2((b - a) / (2 * halfWidth)))) + EXTRA_STEPS
  const k1 = TRUNCATION_SCALE / (b - a)
  let step = 0
  while (b - a > 2 * halfWidth && step <= maxSteps) {
    const middle = a + (b - a) / 2
    const projectionRadius = halfWidth * 2 ** (maxSteps - step) - (b - a) / 2
    const falsi = (fb * a - fa * b) / (fb - fa)
    const towardsMiddle = Math.sign(middle - falsi)
    const truncation = k1 * (b - a) ** TRUNCATION_POWER
    const truncated = truncation <= Math.abs(middle - falsi) ? falsi + towardsMiddle * truncation : middle
    const x = Math.abs(truncated - middle) <= projectionRadius ? truncated : middle - towardsMiddle * projectionRadius
    const y = risesSign * requireNumber('f(x)', f(x), {})
    step += 1
    if (y === 0) return { root: x, evaluations: 2 + step }
    if (y > 0) {
      b = x
      fb = y
    } else {
      a = x
      fa = y
    }
  }
  return { root: a + (b - a) / 2, evaluations: 2 + step }
}
