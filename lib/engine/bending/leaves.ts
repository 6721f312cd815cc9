import { requireNumber } from '../numerics'
import { momentNPerMmWidth as momentOf } from './bent-state'
import { computeLeafLengthDifference, developedLengthMm } from './developed-length'
import type { BendLayer } from './layers'
import { type BondedSection, computeSection } from './section'
import { type BendStrain, computeBendStrain, type Loading } from './strain'

/** One bonded leaf of an unbonded construction in a fold. */
export interface Leaf {
  /** Depth of the leaf's inside face from the inside of the whole fold. */
  innerDepthUm: number
  section: BondedSection
  /** The leaf's own inside radius: the fold's, plus all that lies inside the leaf. */
  insideRadiusMm: number
  strain: BendStrain
  developedLengthMm: number
  /** What it needs more than the innermost leaf: exact, and by the rule of thumb. */
  extraLengthMm: { exactMm: number; ruleOfThumbMm: number }
}

export interface LeavesInFold {
  leaves: Leaf[]
  totalThicknessUm: number
  /** Moment per curvature of all leaves together; they slide, so their rigidities add. */
  rigidityNmm2PerMm: number
  /** Moment that holds all leaves at their radii, per mm of width. */
  momentNPerMmWidth: number
  greatestExtraLengthMm: number
}

/**
 * Leaves that are not bonded to each other, stacked in one fold.
 *
 * Model    each leaf bends about its own axis at R_i + everything inside it; rigidities and moments add
 * Holds    leaves that slide freely and touch, or keep the stated gaps. Leaves of equal length that are fixed at both
 *          ends cannot: the outer one flattens against, or the inner one buckles away from, its neighbour.
 * @param leaves          innermost first, each as for computeSection
 * @param gapsUm          one fewer than leaves: distance from each leaf to the next outer one, >= 0
 * @param insideRadiusMm  of the innermost leaf, >= 0
 * @param angleDeg        > 0
 * @throws  RangeError naming leaf, layer or gap
 * Source   SOURCES.compositeBeam, SOURCES.exactArithmetic
 * @example n equal leaves have 1 / n^2 of the rigidity of the same layers bonded
 */
export function computeLeaves({
  leaves,
  gapsUm,
  insideRadiusMm,
  angleDeg,
  loading = 'once',
}: {
  leaves: readonly (readonly BendLayer[])[]
  gapsUm: readonly number[]
  insideRadiusMm: number
  angleDeg: number
  loading?: Loading
}): LeavesInFold {
  if (leaves.length === 0) throw new RangeError('leaves must hold at least one leaf; found none')
  if (gapsUm.length !== leaves.length - 1) {
    throw new RangeError(
      `gapsUm must hold ${leaves.length - 1} gaps for ${leaves.length} leaves; found ${gapsUm.length}`,
    )
  }
  const placed: Leaf[] = []
  let depthUm = 0
  let rigidityNmm2PerMm = 0
  let momentNPerMmWidth = 0
  let firstAxisUm: number | null = null
  for (const [index, layers] of leaves.entries()) {
    const gapUm = index === 0 ? 0 : (gapsUm[index - 1] ?? 0)
    depthUm += requireNumber(`gapsUm[${index - 1}]`, gapUm, { atLeast: 0, atMost: 1e6, unit: 'um' })
    const section = computeSection(layers)
    const leafRadiusMm = insideRadiusMm + depthUm / 1000
    const strain = computeBendStrain(section, leafRadiusMm, loading)
    const axisDepthUm = depthUm + strain.axisUm
    firstAxisUm ??= axisDepthUm
    placed.push({
      innerDepthUm: depthUm,
      section,
      insideRadiusMm: leafRadiusMm,
      strain,
      developedLengthMm: developedLengthMm({
        insideRadiusMm: leafRadiusMm,
        neutralAxisUm: strain.axisUm,
        angleDeg,
      }),
      extraLengthMm: computeLeafLengthDifference(axisDepthUm - firstAxisUm, angleDeg),
    })
    rigidityNmm2PerMm += section.rigidityNmm2PerMm
    momentNPerMmWidth += momentOf(section.stack, strain.axisUm, strain.curvaturePerMm / 1000)
    depthUm += section.totalThicknessUm
  }
  return {
    leaves: placed,
    totalThicknessUm: depthUm,
    rigidityNmm2PerMm,
    momentNPerMmWidth,
    greatestExtraLengthMm: placed.at(-1)?.extraLengthMm.exactMm ?? 0,
  }
}
