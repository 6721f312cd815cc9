import { requireNumber } from '../numerics'

/** Bar over pitch, and sheet conductance over that of solid copper. */
const CONDUCTANCE: readonly (readonly [barOverPitch: number, fraction: number])[] = [
  [0.2, 0.2118358],
  [0.25, 0.2687697],
  [0.3, 0.3274241],
  [0.35, 0.3878145],
  [0.4, 0.4498401],
  [0.45, 0.5132041],
  [0.5, 0.5773503],
]
export const HATCH_BAR_OVER_PITCH = { low: 0.2, high: 0.5 } as const
/** A ratio of typed lengths carries rounding: 0.06 mm of 0.3 mm is a hair less than 0.2. */
const ROUNDING = 1e-9

/** Whether the conduction of a hatch is known. */
export function isHatchConductionKnown(barOverPitch: number): boolean {
  const { low, high } = HATCH_BAR_OVER_PITCH
  return barOverPitch >= low - ROUNDING && barOverPitch <= high + ROUNDING
}

/** Fewer openings across the width than these, and the edges decide: our choice. */
export const MIN_PITCHES_ACROSS = 3

/**
 * Sheet conductance of a cross hatch over that of solid copper of its thickness. It is the same in every direction, and much less than
 * the copper's share of the area: bars of 0.4 of the pitch cover 64 % and conduct 45 %.
 *
 * Model    potential on a quarter cell, finite differences on three grids extrapolated with the exponent of the corner; between rows
 *          linear, within 3e-4
 * Holds    two families of bars at right angles, direct current, many openings across the width
 * @param barOverPitch  0.2 to 0.5
 * @throws  RangeError naming the argument
 * Source   SOURCES.exactArithmetic; check values in test/standards/conductors (square holes that take a quarter of the area: 1/sqrt(3), exact)
 */
export function hatchConductanceFraction(barOverPitch: number): number {
  requireNumber('barOverPitch', barOverPitch, {
    atLeast: HATCH_BAR_OVER_PITCH.low - ROUNDING,
    atMost: HATCH_BAR_OVER_PITCH.high + ROUNDING,
  })
  let [lower, lowerFraction] = CONDUCTANCE[0] ?? [0, 0]
  for (const [upper, upperFraction] of CONDUCTANCE.slice(1)) {
    if (barOverPitch <= upper) {
      return lowerFraction + ((upperFraction - lowerFraction) * (barOverPitch - lower)) / (upper - lower)
    }
    lower = upper
    lowerFraction = upperFraction
  }
  return lowerFraction
}
