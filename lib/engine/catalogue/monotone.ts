/**
 * An input of the design, or of the facts (`facts.`), in which an item is monotone: made worse, it never improves the verdict. `[]` stands
 * for every entry of a list; an entry without the input is passed over.
 */
export interface Monotone {
  readonly path: string
  readonly worse: 'smaller' | 'larger' | 'yes' | 'no'
}

export const TIGHTER_BEND: readonly Monotone[] = [
  { path: 'bends[].insideRadiusMm', worse: 'smaller' },
  { path: 'bends[].radiusToleranceMm', worse: 'larger' },
]

export const LONGER_LIFE: readonly Monotone[] = [
  { path: 'bends[].requiredCycles', worse: 'larger' },
  { path: 'brief.lifeSurvivalPct', worse: 'larger' },
]

export const WIDER_TOLERANCES: readonly Monotone[] = [
  { path: 'construction.layers[].tolerancePlusUm', worse: 'larger' },
  { path: 'construction.layers[].toleranceMinusUm', worse: 'larger' },
]

/** A longer way from the flatter end, a tighter fold before, and more pull or twist. */
export const MORE_STATES: readonly Monotone[] = [
  { path: 'bends[].flexesFromRadiusMm', worse: 'larger' },
  { path: 'bends[].flexesFromAngleDeg', worse: 'smaller' },
  { path: 'bends[].foldedToRadiusMm', worse: 'smaller' },
  { path: 'bends[].pullN', worse: 'larger' },
  { path: 'bends[].twistDeg', worse: 'larger' },
  { path: 'bends[].twistLengthMm', worse: 'smaller' },
]
