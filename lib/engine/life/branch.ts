import { requireNumber } from '../numerics'
import { type FatigueFoil, RANKING_LIMIT_CYCLES } from './fatigue'

/** Exponents of the relation's first term, N^-0.6 D_f^0.75. */
const DUCTILITY_EXPONENT = 0.75
const CYCLES_EXPONENT = 0.6

/**
 * Median life that the ductility of a foil carries by itself, without the term that follows tensile strength.
 *
 * Model    d_eps = N^-0.6 D_f^0.75, solved for N; not beyond the life up to which the relation may rank foils
 * Holds    a bound from below: the whole relation never gives less. Long lives of strong, brittle foil come from the
 *          strength term, which flex tests of foil do not bear out.
 * @param strainRangeFraction  > 0 to 10
 * @throws  RangeError naming the argument
 * Source   SOURCES.fatigueDuctility
 */
export function ductilityLifeCycles({ fatigueDuctility }: FatigueFoil, strainRangeFraction: number): number {
  requireNumber('strainRangeFraction', strainRangeFraction, { above: 0, atMost: 10 })
  const cycles = (fatigueDuctility ** DUCTILITY_EXPONENT / strainRangeFraction) ** (1 / CYCLES_EXPONENT)
  return Math.min(RANKING_LIMIT_CYCLES, cycles)
}

/**
 * Strain range at which ductility by itself carries a number of cycles; null beyond the life up to which the relation
 * may rank foils.
 *
 * @param cycles  median life, >= 1
 * @throws  RangeError naming the argument
 * Source   as ductilityLifeCycles
 */
export function ductilityStrainRangeFraction({ fatigueDuctility }: FatigueFoil, cycles: number): number | null {
  requireNumber('cycles', cycles, { above: 0 })
  return cycles > RANKING_LIMIT_CYCLES ? null : cycles ** -CYCLES_EXPONENT * fatigueDuctility ** DUCTILITY_EXPONENT
}
