import type { Bend } from '../design'
import { computeAllowableStrain, type FatigueFoil, type Survival } from '../life'
import { readEnds } from '../materials'
import type { QuantityRange } from '../results'
import { findNeededCycles } from './bend-allowables'
import type { ConductorInBend } from './bend-section'

/**
 * Foils of one description that may reach the least and the most cycles at a strain.
 *
 * Rule     the relation gives more life for more strength and for a lower modulus. With ductility it rises or, beyond 1e5 cycles, falls; in
 *          between it rises first and falls then, so that the least life has it at one of its ends.
 */
export interface FoilCorners {
  readonly weakest: readonly FatigueFoil[]
  readonly strongest: readonly FatigueFoil[]
}

export function listFoilCorners({ material, foil }: ConductorInBend): FoilCorners {
  const modulus = readEnds('modulusGpa', material.modulusGpa)
  const strength = readEnds('tensileStrengthMpa', foil.tensileStrengthMpa)
  const ductility = readEnds('fatigueDuctility', foil.fatigueDuctility)
  const nominal = foil.fatigueDuctility.value
  const make = (tensileStrengthMpa: number, modulusGpa: number) =>
    [ductility.low, nominal, ductility.high].map((fatigueDuctility) => ({
      fatigueDuctility,
      tensileStrengthMpa,
      modulusGpa,
    }))
  return {
    weakest: make(strength.low, modulus.high).filter((_, at) => at !== 1),
    strongest: make(strength.high, modulus.low),
  }
}

/**
 * Allowable strain over the spread of the foil's constants; null where there is none.
 *
 * @param used  share of the life that an earlier fold has used up, at its best and worst
 */
export function findAllowableRange(
  part: ConductorInBend,
  { use, motion, requiredCycles }: Bend,
  survival: Survival,
  allowablePct: number | null,
  used: QuantityRange = { low: 0, high: 0 },
): QuantityRange | null {
  if (allowablePct === null || use === null) return null
  if (use !== 'dynamic') {
    const constant = use === 'fold-once' ? 'allowableFoldOncePct' : 'allowableInstallPct'
    const record = part.foil[constant]
    if (record === null) return null
    const { low, high } = readEnds(constant, record)
    return { low, high }
  }
  if (requiredCycles === null) return null
  const { weakest, strongest } = listFoilCorners(part)
  const allowed = (usedShare: number) => (foil: FatigueFoil) =>
    computeAllowableStrain({ foil, requiredCycles: findNeededCycles(requiredCycles, usedShare), motion, survival })
      .strainPct
  return { low: Math.min(...weakest.map(allowed(used.high))), high: Math.max(...strongest.map(allowed(used.low))) }
}

/** Yield strain over the spread of yield strength and modulus. */
export function findYieldRange({ material, foil, yieldStrainPct }: ConductorInBend): QuantityRange {
  const strength = readEnds('yieldStrengthMpa', foil.yieldStrengthMpa)
  const modulus = readEnds('modulusGpa', material.modulusGpa)
  const nominal = foil.yieldStrengthMpa.value / material.modulusGpa.value
  return {
    low: (yieldStrainPct * strength.low) / modulus.high / nominal,
    high: (yieldStrainPct * strength.high) / modulus.low / nominal,
  }
}
