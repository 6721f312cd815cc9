import type { Leaf } from '../bending'
import type { FreeFold } from '../results'
import type { StatedStates } from './bend-states'

/** What goes along with the figures of a bend that has more than one state, a load beside bending, or two faces that hold it. */
export function listStateCautions(
  { from, foldedToRadiusMm, pullN, twistRatePerMm }: StatedStates,
  freeFold: FreeFold | null,
  leaves: readonly Leaf[],
): string[] {
  const cautions: string[] = []
  if (from !== null) {
    cautions.push(
      'Strain range and life are those of the motion between its two ends. The mean strain is not in the fatigue relation; a mean in tension shortens life. No published range was found to check it against: qualify by test.',
    )
  }
  if (foldedToRadiusMm !== null) {
    cautions.push(
      'The fold before uses up life by the linear damage sum, as one cycle. A hard fold does more harm than the sum says, and the set it leaves is not computed: qualify with parts that were folded.',
    )
  }
  if (pullN > 0) {
    cautions.push(
      `The pull is taken as shared evenly over the width, along the part, and to come and go with each cycle.${leaves.length > 1 ? ' Any one of the unbonded leaves is taken to carry all of it.' : ''}`,
    )
  }
  if (twistRatePerMm > 0) {
    cautions.push(
      'The twist is taken as even over its length, with copper up to the edge; it is added to the bending as if both were greatest at the same place. Bending and twist together were not checked by finite elements: qualify by test.',
    )
  }
  if (pullN > 0 || twistRatePerMm > 0) {
    cautions.push('Handbook radius, ratio to thickness, moment and springback know neither pull nor twist.')
  }
  if (freeFold !== null) {
    cautions.push(
      'The radius between two faces is that of a free fold with nothing inside it; adhesive, friction and the contact with the faces are not in it.',
    )
  }
  return cautions
}
