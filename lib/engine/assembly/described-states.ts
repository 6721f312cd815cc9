import type { Leaf } from '../bending'
import type { Bend } from '../design'
import type { BendResult } from '../results'
import { findFromRadiusMm, type StatedStates } from './bend-states'
import type { LeafStates } from './leaf-states'

/** States and loads as the results show them. */
export function describeStates(
  { insideRadiusMm, foldedToRadiusMm, pullN, twistDeg, twistLengthMm }: Bend,
  states: StatedStates,
  leaves: readonly Leaf[],
  leafStates: readonly LeafStates[],
): NonNullable<BendResult['states']> {
  const [innermost] = leaves
  const torques = leafStates.flatMap(({ loads }) => loads?.twist?.torqueNmm ?? [])
  return {
    fromRadiusMm:
      innermost === undefined ? null : findFromRadiusMm(states, insideRadiusMm, innermost.section.neutralAxisUm),
    equivalentRadiusMm: leafStates[0]?.equivalentRadiusMm ?? null,
    foldedToRadiusMm,
    pullN: pullN ?? 0,
    twistDeg: twistDeg ?? 0,
    twistLengthMm,
    twistTorqueNmm: torques.length === 0 ? null : torques.reduce((sum, torque) => sum + torque, 0),
  }
}
