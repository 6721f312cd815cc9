import type { PairFigures } from './line-figures'
import { delayPsPerMm } from './line-figures'

/** What a quiet line shows at its near end, as shares of the step on the other line. Two conventions circulate; both are here by name. */
export interface NearEnd {
  /** ¼(C_m/C + L_m/L): the usual backward coefficient, half of the coupler's. */
  readonly backwardFraction: number
  /** The saturated step with both lines ended in √(Z_even Z_odd): exact, and what a limit is held against. */
  readonly saturatedStepFraction: number
}

/** With k = (Z_even - Z_odd)/(Z_even + Z_odd) the step is (√Z_even - √Z_odd)/(√Z_even + √Z_odd) = k/(1 + √(1-k²)). Exact mathematics. */
export function getNearEnd({ capacitiveCoupling, inductiveCoupling, couplingCoefficient: k }: PairFigures): NearEnd {
  return {
    backwardFraction: (capacitiveCoupling + inductiveCoupling) / 4,
    saturatedStepFraction: k / (1 + Math.sqrt(1 - k * k)),
  }
}

/**
 * Share of the saturated step that a coupled length reaches with an edge of finite rise time: all of it once the way there and back takes
 * as long as the edge, in proportion below. Common form in instrument manuals.
 */
export function reachedFraction(lengthMm: number, effectivePermittivity: number, riseTimePs: number): number {
  return Math.min(1, (2 * lengthMm * delayPsPerMm(effectivePermittivity)) / riseTimePs)
}

/** Far end per unit of (delay of the line)/(rise time): -(L_m/L - C_m/C)/2. Zero where both modes travel alike. */
export function farEndHalfDifference({ capacitiveCoupling, inductiveCoupling }: PairFigures): number {
  return -(inductiveCoupling - capacitiveCoupling) / 2
}
