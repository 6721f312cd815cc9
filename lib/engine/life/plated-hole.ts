import { requireNumber } from '../numerics'
import type { FatigueFoil } from './fatigue'

/** Copper plated on the wall of a hole, as two straight lines. */
export interface WallCopper extends FatigueFoil {
  readonly yieldStrengthMpa: number
}

/** Slope of plated copper past its yield. Source SOURCES.platedHoleFatigue. */
export const PLATED_COPPER_PLASTIC_MODULUS_GPA = 0.6894757
/** Source SOURCES.platedHoleFatigue. */
export const PLATED_COPPER_EXPANSION_PPM_PER_C = 18

/**
 * Rating of a wall's plating, by which strain is multiplied: extraordinary to poor. Source SOURCES.holePlatingQuality.
 */
export const PLATING_QUALITY_FACTORS = {
  extraordinary: 10,
  superior: 8.7,
  good: 6.7,
  marginal: 4.8,
  poor: 3.5,
} as const

export type PlatingQuality = keyof typeof PLATING_QUALITY_FACTORS

/** Strain gathers in the middle of a wall: K_d. Source SOURCES.holePlatingQuality. */
const STRAIN_DISTRIBUTION_FACTOR = 1.6

/**
 * How much more than its mean the strain of a wall counts: K_d 10 / K_Q.
 *
 * Source   SOURCES.holePlatingQuality; check values in test/standards/fatigue
 */
export function strainMultiplier(quality: PlatingQuality): number {
  return (STRAIN_DISTRIBUTION_FACTOR * 10) / PLATING_QUALITY_FACTORS[quality]
}

/**
 * Slope of the lives of plated walls: the least of three that were published, of coupons under control. Source SOURCES.barrelScatter.
 */
export const WALL_WEIBULL_SLOPE = 4.92

export interface BarrelStrain {
  /** Stress that elastic copper would have. */
  readonly elasticTrialStressMpa: number
  readonly stressMpa: number
  /** Mean strain range of the wall over one cycle, a fraction; always above 0 where the stack moves against copper. */
  readonly strainRangeFraction: number
  readonly isPastYield: boolean
}

/**
 * Strain of the copper wall of a plated hole over one temperature cycle.
 *
 * Model    the stack around the hole, a ring of (stackThickness + drill) outside and the drill inside, pulls the wall in series with it;
 *          copper follows two straight lines
 * Holds    below the glass transition of the stack; one stack with constants of its own through its thickness; whole wall, no crack
 * @param expansionPpmPerC  of the stack through its thickness, above 0
 * @param temperatureRangeDegC  above 0, hot end less cold end
 * @param drillMm  diameter of the drilled hole, above twice the wall
 * @throws  RangeError naming the argument
 * Source   SOURCES.platedHoleFatigue (series compliance), SOURCES.fatigueDuctility; worked case in test/standards/fatigue
 */
export function computeBarrelStrain({
  expansionPpmPerC,
  stackModulusGpa,
  stackThicknessMm,
  drillMm,
  wallUm,
  temperatureRangeDegC,
  copper,
}: {
  expansionPpmPerC: number
  stackModulusGpa: number
  stackThicknessMm: number
  drillMm: number
  wallUm: number
  temperatureRangeDegC: number
  copper: WallCopper
}): BarrelStrain {
  requireNumber('expansionPpmPerC', expansionPpmPerC, { above: 0, atMost: 1000, unit: 'ppm/degC' })
  requireNumber('stackModulusGpa', stackModulusGpa, { above: 0, atMost: 100, unit: 'GPa' })
  requireNumber('stackThicknessMm', stackThicknessMm, { above: 0, atMost: 100, unit: 'mm' })
  requireNumber('drillMm', drillMm, { above: 0, atMost: 5000, unit: 'mm' })
  requireNumber('wallUm', wallUm, { above: 0, below: 500 * drillMm, unit: 'um' })
  requireNumber('temperatureRangeDegC', temperatureRangeDegC, { above: 0, atMost: 2000, unit: 'degC' })
  const boreMm = drillMm - (2 * wallUm) / 1000
  const stackMm2 = (Math.PI / 4) * ((stackThicknessMm + drillMm) ** 2 - drillMm ** 2)
  const copperMm2 = (Math.PI / 4) * (drillMm ** 2 - boreMm ** 2)
  const free = Math.abs(expansionPpmPerC - PLATED_COPPER_EXPANSION_PPM_PER_C) * 1e-6 * temperatureRangeDegC
  const { modulusGpa, yieldStrengthMpa } = copper
  const inSeries = (copperGpa: number): number =>
    (1000 * stackMm2 * stackModulusGpa * copperGpa) / (stackMm2 * stackModulusGpa + copperMm2 * copperGpa)
  const elasticTrialStressMpa = free * inSeries(modulusGpa)
  if (elasticTrialStressMpa <= yieldStrengthMpa) {
    return {
      elasticTrialStressMpa,
      stressMpa: elasticTrialStressMpa,
      strainRangeFraction: elasticTrialStressMpa / (1000 * modulusGpa),
      isPastYield: false,
    }
  }
  const plasticGpa = Math.min(PLATED_COPPER_PLASTIC_MODULUS_GPA, modulusGpa)
  const offset = (yieldStrengthMpa / 1000) * (1 / plasticGpa - 1 / modulusGpa)
  const stressMpa = (free + offset) * inSeries(plasticGpa)
  return {
    elasticTrialStressMpa,
    stressMpa,
    strainRangeFraction: yieldStrengthMpa / (1000 * modulusGpa) + (stressMpa - yieldStrengthMpa) / (1000 * plasticGpa),
    isPastYield: true,
  }
}
