import { solveCoupling, type ZoneLine } from '../lines'
import type { LineSection } from '../signals'

type Solvable = Extract<ZoneLine, { kind: 'solvable' }>

export interface SpacingPoint {
  /** From edge to edge of the two lines. */
  readonly spaceMm: number
  /** Saturated step at the near end, and the other convention; shares of the step. */
  readonly nearEndFraction: number
  readonly backwardFraction: number
  /** Near end with a grounded guard midway; null where the space holds none. */
  readonly guardedFraction: number | null
}

/** In widths of the line. */
const SPACES = [0.5, 1, 1.5, 2, 3, 4, 6]
/** A guard leaves at least this much of its own width on either side: closer gaps are the next thing to fail. Our choice. */
const LEAST_GAP_WIDTHS = 0.5

/**
 * Near-end crosstalk between two lines of equal width on one layer, over the space between them; alone, and with a guard as wide as a line midway.
 *
 * Range  the guard has the potential of the planes all along, which takes vias at both ends and in between, closer than a fraction of the edge's length. One that is open, or
 *        grounded at its ends alone, rings and can couple more than no guard: nothing here tells how much.
 */
export function* followSpaces(line: Solvable, widthMm: number): Generator<undefined, readonly SpacingPoint[]> {
  const points: SpacingPoint[] = []
  for (const widths of SPACES) {
    const spaceMm = widths * widthMm
    const open = solveCoupling(withNeighbour(line, widthMm, spaceMm, false))
    yield
    if (open === null) continue
    const hasRoom = widths >= 1 + 2 * LEAST_GAP_WIDTHS
    const guarded = hasRoom ? solveCoupling(withNeighbour(line, widthMm, spaceMm, true)) : null
    yield
    points.push({
      spaceMm,
      nearEndFraction: open.nearEndFraction,
      backwardFraction: open.backwardFraction,
      guardedFraction: guarded?.nearEndFraction ?? null,
    })
  }
  return points
}

function withNeighbour(line: Solvable, widthMm: number, spaceMm: number, isGuarded: boolean): LineSection {
  const section = line.makeSection('nominal', widthMm)
  const pitchUm = 1000 * (widthMm + spaceMm)
  const [own] = section.conductors
  if (own === undefined) return section
  return {
    ...section,
    conductors: [
      { ...own, name: 'the line', centreUm: 0 },
      ...(isGuarded ? [{ ...own, name: 'the guard', centreUm: pitchUm / 2, isGrounded: true }] : []),
      { ...own, name: 'the line beside it', centreUm: pitchUm },
    ],
  }
}
