import { computeParallelFaceFold, type Leaf } from '../bending'
import { BEND_FIELDS, type Bend } from '../design'
import type { FreeFold, ModelLimit } from '../results'
import { inSentence } from '../units'

/** Copper past yield leaves the tip radius of the elastic fold within this (finite elements). */
const TIP_ACCURACY_FRACTION = 0.02

interface FoldBetweenFaces {
  readonly freeFold: FreeFold | null
  readonly limits: readonly ModelLimit[]
}

/**
 * The fold of a bend that two parallel faces hold: its tip is tighter than half the gap, and a typed radius that is larger than the tip's says
 * too little strain.
 */
export function computeFreeFold(bend: Bend, leaves: readonly Leaf[]): FoldBetweenFaces {
  const { radiusHeldBy, faceGapMm, insideRadiusMm, radiusToleranceMm } = bend
  const [leaf, ...others] = leaves
  if (radiusHeldBy !== 'between-faces' || faceGapMm === null || leaf === undefined) {
    return { freeFold: null, limits: [] }
  }
  const cannot = (because: string, decidedBy: string): FoldBetweenFaces => ({
    freeFold: null,
    limits: [{ kind: 'states', because, decidedBy }],
  })
  if (others.length > 0) {
    return cannot(
      'the fold of several unbonded leaves between two faces is not computed',
      'fold samples and measure the tip, or hold the radius by a former',
    )
  }
  const thicknessMm = leaf.section.totalThicknessUm / 1000
  if (faceGapMm <= 2 * thicknessMm) {
    return cannot(
      `a gap of ${inSentence(faceGapMm, 'mm')} does not hold two legs of ${inSentence(thicknessMm, 'mm')}`,
      `check "${BEND_FIELDS.faceGapMm.label}"`,
    )
  }
  const { forceN, tipInsideRadiusMm } = computeParallelFaceFold(leaf.section, faceGapMm, bend.axisLengthMm)
  if (tipInsideRadiusMm <= 0) {
    return cannot(
      `in a gap of ${inSentence(faceGapMm, 'mm')} the tip of the fold closes on itself`,
      `check "${BEND_FIELDS.faceGapMm.label}"`,
    )
  }
  const freeFold = { faceGapMm, tipInsideRadiusMm, forceN }
  return insideRadiusMm - radiusToleranceMm <= (1 - TIP_ACCURACY_FRACTION) * tipInsideRadiusMm
    ? { freeFold, limits: [] }
    : {
        freeFold,
        limits: [
          {
            kind: 'states',
            because: `between faces ${inSentence(faceGapMm, 'mm')} apart the tip of the fold has an inside radius of ${inSentence(tipInsideRadiusMm, 'mm')} (within ${inSentence(100 * TIP_ACCURACY_FRACTION, 'pct')}), and ${inSentence(insideRadiusMm, 'mm')} is stated, with its tolerance no tighter than that`,
            decidedBy: 'state the inside radius of the tip, or open the gap',
          },
        ],
      }
}
