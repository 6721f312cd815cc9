import { requireNumber } from '../numerics'
import {
  type BendMotion,
  computeMedianLife,
  type FatigueFoil,
  fatigueStrainRangeFraction,
  MAX_CYCLES,
  type MedianLife,
  MIN_CYCLES,
  strainRangeOfMotion,
} from './fatigue'
import { lifeOverMedianFraction } from './survival'

/** How sure the life must be. */
export interface Survival {
  /** Share of conductors that may fail sooner, above 0 and below 1. */
  failureFraction: number
  weibullSlope: number
  /** Lives as a share of the relation's, above 0 to 1, where tests broke sooner than it says; 1 where left out. */
  lifeFraction?: number
}

/** Life at the survival asked for over the relation's median: scatter, and how far tests fall short of the relation. */
export function survivalOverRelation({ failureFraction, weibullSlope, lifeFraction = 1 }: Survival): number {
  return lifeFraction * lifeOverMedianFraction(failureFraction, weibullSlope)
}

export interface BendLife {
  median: MedianLife
  /** Life at the survival asked for. */
  survivalCycles: number
}

/**
 * Life of a conductor under repeated bending.
 *
 * @param strainPct  magnitude at the worst face, > 0 to 100
 * @throws  RangeError naming the argument
 * Source   SOURCES.fatigueDuctility (quoted), SOURCES.weibull
 */
export function computeBendLife({
  foil,
  strainPct,
  motion,
  survival,
}: {
  foil: FatigueFoil
  strainPct: number
  motion: BendMotion
  survival: Survival
}): BendLife {
  requireNumber('strainPct', strainPct, { above: 0, atMost: 500, unit: '%' })
  const median = computeMedianLife(foil, strainRangeOfMotion(strainPct / 100, motion))
  return {
    median,
    survivalCycles: median.cycles * survivalOverRelation(survival),
  }
}

export interface AllowableStrain {
  strainPct: number
  /** Median life that the survival asked for takes. */
  neededMedianCycles: number
  /** True where the median needed lies beyond 1e12 cycles: the strain is then that of 1e12, and not enough. */
  beyondRelation: boolean
}

/**
 * Largest strain at which a conductor still reaches a required life at the survival asked for.
 *
 * @param requiredCycles  1 to 1e12
 * @throws  RangeError naming the argument
 * Source   SOURCES.fatigueDuctility (quoted), SOURCES.weibull
 */
export function computeAllowableStrain({
  foil,
  requiredCycles,
  motion,
  survival,
}: {
  foil: FatigueFoil
  requiredCycles: number
  motion: BendMotion
  survival: Survival
}): AllowableStrain {
  requireNumber('requiredCycles', requiredCycles, { atLeast: MIN_CYCLES, atMost: MAX_CYCLES, unit: 'cycles' })
  const neededMedianCycles = requiredCycles / survivalOverRelation(survival)
  const range = fatigueStrainRangeFraction(foil, Math.min(MAX_CYCLES, Math.max(MIN_CYCLES, neededMedianCycles)))
  return {
    strainPct: (100 * range) / strainRangeOfMotion(1, motion),
    neededMedianCycles,
    beyondRelation: neededMedianCycles > MAX_CYCLES,
  }
}
