import { requireNumber } from '../numerics'

/**
 * Weibull slope where nobody enters one. No published slope for flex copper was found; 2 to 4 are quoted for solder
 * joints, and the lower one is the careful choice. Common practice, no published source: show it as a default.
 */
export const DEFAULT_WEIBULL_SLOPE = 2

/**
 * Life that all but a small share of conductors reach, over the median life.
 *
 * Model    two-parameter Weibull: N(x) / N(50 %) = [ln(1 - x) / ln 0.5]^(1 / beta)
 * @param failureFraction  x, share that fails sooner, above 0 and below 1; survival of 99 % is 0.01
 * @param weibullSlope     beta, 0.5 to 20
 * @returns factor to multiply the median life with; below 1 for x below one half
 * @throws  RangeError naming the argument
 * Source   SOURCES.weibull; check values in test/standards/fatigue
 * @example slope 2, 1 % failing: 0.12
 */
export function lifeOverMedianFraction(failureFraction: number, weibullSlope: number): number {
  requireNumber('failureFraction', failureFraction, { above: 0, below: 1 })
  requireNumber('weibullSlope', weibullSlope, { atLeast: 0.5, atMost: 20 })
  // log1p keeps its digits where 1 - x would round to 1.
  return (Math.log1p(-failureFraction) / -Math.LN2) ** (1 / weibullSlope)
}

/** One kind of bending that a conductor goes through. */
export interface DamageBlock {
  cycles: number
  /** Life under that bending alone. */
  lifeCycles: number
}

/** Damage sums at which failures were seen. Source SOURCES.miner; check values in test/standards/fatigue. */
export const DAMAGE_SUM_AT_FAILURE = { low: 0.7, high: 2.2 } as const

/**
 * Linear damage sum over several bends or several motions of one part.
 *
 * Model    damage = sum(n_i / N_i); failure is expected at 1, and was seen from 0.7 to 2.2
 * Holds    order of loading ignored: one hard fold before many gentle cycles does more harm than the sum says
 * @param blocks  cycles >= 0, lifeCycles > 0; none gives damage 0
 * @returns repeatsToFailure and its range are null when nothing is done to the part
 * @throws  RangeError naming the block
 * Source   SOURCES.miner; check values in test/standards/fatigue
 */
export function computeDamage(blocks: readonly DamageBlock[]): {
  damage: number
  repeatsToFailure: number | null
  repeatsRange: { low: number; high: number } | null
} {
  let damage = 0
  for (const [index, { cycles, lifeCycles }] of blocks.entries()) {
    requireNumber(`blocks[${index}].cycles`, cycles, { atLeast: 0, atMost: 1e15, unit: 'cycles' })
    requireNumber(`blocks[${index}].lifeCycles`, lifeCycles, { above: 0, unit: 'cycles' })
    damage += cycles / lifeCycles
  }
  if (damage === 0) return { damage, repeatsToFailure: null, repeatsRange: null }
  const { low, high } = DAMAGE_SUM_AT_FAILURE
  return { damage, repeatsToFailure: 1 / damage, repeatsRange: { low: low / damage, high: high / damage } }
}
