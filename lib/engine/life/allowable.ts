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
    survivalCycles: median.cycles * lifeOverMedianFraction(survival.failureFraction, survival.weibullSlope),
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
  const neededMedianCycles = requiredCycles / lifeOverMedianFraction(survival.failureFraction, survival.weibullSlope)
  const range = fatigueStrainRangeFraction(foil, Math.min(MAX_CYCLES, Math.max(MIN_CYCLES, neededMedianCycles)))
  return {
    strainPct: (100 * range) / strainRangeOfMotion(1, motion),
    neededMedianCycles,
    beyondRelation: neededMedianCycles > MAX_CYCLES,
  }
}

/** Where a conductor face lies in its section. */
export interface FaceArm {
  /** Distance from the neutral axis, > 0. */
  armUm: number
  neutralAxisUm: number
}

/**
 * Smallest inside radius at which a conductor face reaches the required life: R_i = arm / eps - y_n, not below 0.
 *
 * @param strainPct  the allowable, > 0
 * @throws  RangeError naming the argument
 * Source   SOURCES.compositeBeam
 */
export function minInsideRadiusForStrainMm({ armUm, neutralAxisUm }: FaceArm, strainPct: number): number {
  requireNumber('armUm', armUm, { above: 0, atMost: 1e6, unit: 'um' })
  requireNumber('neutralAxisUm', neutralAxisUm, { atLeast: 0, atMost: 1e6, unit: 'um' })
  requireNumber('strainPct', strainPct, { above: 0, atMost: 500, unit: '%' })
  return Math.max(0, (100 * armUm) / strainPct - neutralAxisUm) / 1000
}

export interface LifeAtRadius {
  insideRadiusMm: number
  strainPct: number
  medianCycles: number
  survivalCycles: number
  bound: MedianLife['bound']
}

/**
 * Life against inside radius for one conductor face, for a plot on log axes.
 *
 * @param insideRadiiMm  each >= 0
 * @throws  RangeError naming the argument
 * Source   as computeBendLife
 */
export function computeLifeOverRadius({
  face: { armUm, neutralAxisUm },
  foil,
  motion,
  survival,
  insideRadiiMm,
}: {
  face: FaceArm
  foil: FatigueFoil
  motion: BendMotion
  survival: Survival
  insideRadiiMm: readonly number[]
}): LifeAtRadius[] {
  requireNumber('armUm', armUm, { above: 0, atMost: 1e6, unit: 'um' })
  requireNumber('neutralAxisUm', neutralAxisUm, { above: 0, atMost: 1e6, unit: 'um' })
  return insideRadiiMm.map((insideRadiusMm, index) => {
    requireNumber(`insideRadiiMm[${index}]`, insideRadiusMm, { atLeast: 0, atMost: 1e6, unit: 'mm' })
    const strainPct = (100 * armUm) / (1000 * insideRadiusMm + neutralAxisUm)
    const { median, survivalCycles } = computeBendLife({ foil, strainPct, motion, survival })
    return { insideRadiusMm, strainPct, medianCycles: median.cycles, survivalCycles, bound: median.bound }
  })
}
