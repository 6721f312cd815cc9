import { computeLeaves } from '../bending'
import type { Bend } from '../design'
import type { QuantityRange } from '../results'
import { loadingOf } from './bend-conductors'
import type { BendInputs } from './bend-inputs'
import { findLeafLengthRange } from './bend-ranges'
import type { BendSection } from './bend-section'
import { isMoreThanOneState, readStates, type StatedStates } from './bend-states'
import { computeHeldPulls, type HeldPulls } from './leaf-pull'

/** The leaves of a bend at their radii, with all that loads them. */
export interface BentLeaves {
  readonly fold: ReturnType<typeof computeLeaves>
  readonly states: StatedStates
  readonly leafLengthRangeMm: QuantityRange
  readonly held: HeldPulls
}

/** The one way from a bend and its section to bent leaves: of the verdict, and of each point of a curve and end of a swing. */
export function bendLeaves(bend: Bend, section: BendSection, heldOver: BendInputs['heldOver']): BentLeaves {
  const loading = loadingOf(bend)
  const fold = computeLeaves({
    leaves: section.leaves.map((leaf) => leaf.layers),
    gapsUm: section.gapsUm,
    insideRadiusMm: bend.insideRadiusMm,
    angleDeg: bend.angleDeg,
    loading,
  })
  const leafLengthRangeMm = findLeafLengthRange(fold.leaves, section, bend)
  return {
    fold,
    states: readStates(bend),
    leafLengthRangeMm,
    held: computeHeldPulls(bend, fold.leaves, section.leaves, leafLengthRangeMm, loading, heldOver),
  }
}

/** Bent from flat to one radius, with no leaf pulled and nothing left open: what own flex tests are of. */
export const isFromFlatAlone = ({ states, held }: Pick<BentLeaves, 'states' | 'held'>): boolean =>
  !isMoreThanOneState(states) && held.byLeaf.every((pull) => pull === null) && held.limits.length === 0
