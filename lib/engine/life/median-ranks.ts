import type { LifeSpecimen } from './weibull-fit'

/** Where a failure stands on a Weibull plot. */
export interface RankedFailure {
  readonly cycles: number
  /** Order number among all specimens; no whole number where survivors left the test before. */
  readonly order: number
  /** Share of specimens that fail no later, as a median rank. */
  readonly failureFraction: number
}

/**
 * Plotting positions of the failures of a life test.
 *
 * Model    order numbers adjusted for survivors: each step is (n + 1 - previous order) / (1 + specimens from here on), 1 where none survived;
 *          median rank by Benard's approximation (order - 0.3) / (n + 0.4), within 0.01 of the exact rank, the median of a beta
 *          distribution. Of specimens at one number of cycles the failures stand first.
 * Holds    for the picture alone: slope and life come from the likelihood, not from a line through these points.
 * Source   SOURCES.medianRanks (from memory); check values in test/standards/life
 */
export function rankFailures(specimens: readonly LifeSpecimen[]): RankedFailure[] {
  const inOrder = specimens.toSorted((a, b) => a.cycles - b.cycles || Number(a.hasSurvived) - Number(b.hasSurvived))
  const count = inOrder.length
  let order = 0
  return inOrder.flatMap(({ cycles, hasSurvived }, at) => {
    if (hasSurvived) return []
    order += (count + 1 - order) / (1 + count - at)
    return [{ cycles, order, failureFraction: (order - 0.3) / (count + 0.4) }]
  })
}
