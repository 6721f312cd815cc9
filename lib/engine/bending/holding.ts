import { requireNumber } from '../numerics'
import { bendingWorkNPerMm, findAxisUm, momentNPerMmWidth } from './bent-state'
import type { BondedSection } from './section'

const MAX_LENGTH_MM = 1e6

/**
 * Force that holds a fold when it acts on a straight tail, at right angles to it: F = M / lever.
 *
 * @param momentNmm  >= 0
 * @param leverMm    from the end of the bend to where the force acts, > 0
 * @returns N
 * @throws  RangeError naming the argument
 * Source   SOURCES.exactArithmetic (equilibrium)
 */
export function holdingForceN(momentNmm: number, leverMm: number): number {
  return requireNumber('momentNmm', momentNmm, { atLeast: 0, unit: 'N mm' }) / requireLength('leverMm', leverMm)
}

/** Integral of sqrt(sin theta) from 0 to pi/2, = sqrt(pi) Gamma(3/4) / (2 Gamma(5/4)). */
export const ELASTICA_FACTOR = 1.198140234735592

export interface ParallelFaceFold {
  /** Force with which the fold pushes the faces apart. */
  forceN: number
  /** Radius of the neutral axis at the fold's tip, its tightest place. */
  tipAxisRadiusMm: number
  /** Inside radius there; negative where the gap is too narrow for the thickness. */
  tipInsideRadiusMm: number
}

/**
 * A fold of 180 degrees held between two parallel faces with nothing inside it: the tip is tighter than half the gap.
 *
 * Model    elastica: with h the distance between the neutral axes of both legs, tip radius = h / (2 A), A = 1.19814. Force from the tip,
 *          F = kappa M - W (complementary work, W the integral of M over kappa), which is exact for any moment-curvature relation
 *          and D / (2 R^2) while nothing yields
 * Holds    free fold, no former inside. Copper past yield leaves the tip radius within 2 % (finite elements).
 * @param faceGapMm  between the faces, above twice the depth of the outer skin from the axis
 * @param widthMm    along the bend axis, > 0
 * @throws  RangeError naming the argument, also when the two legs do not fit into the gap
 * Source   SOURCES.parallelFaceFold; check values in test/standards/bending, finite elements in test/standards/finite-elements
 */
export function computeParallelFaceFold(section: BondedSection, faceGapMm: number, widthMm: number): ParallelFaceFold {
  requireLength('widthMm', widthMm)
  const outsideAxisMm = (section.totalThicknessUm - section.neutralAxisUm) / 1000
  requireNumber('faceGapMm', faceGapMm, {
    above: (2 * section.totalThicknessUm) / 1000,
    atMost: MAX_LENGTH_MM,
    unit: 'mm',
  })
  const axisGapMm = faceGapMm - 2 * outsideAxisMm
  const tipAxisRadiusMm = axisGapMm / (2 * ELASTICA_FACTOR)
  const curvaturePerUm = 1 / (1000 * tipAxisRadiusMm)
  const axisUm = findAxisUm(section.stack, { curvaturePerUm })
  const moment = momentNPerMmWidth(section.stack, axisUm, curvaturePerUm)
  const work = bendingWorkNPerMm(section.stack, axisUm, curvaturePerUm)
  return {
    forceN: (moment / tipAxisRadiusMm - work) * widthMm,
    tipAxisRadiusMm,
    tipInsideRadiusMm: tipAxisRadiusMm - section.neutralAxisUm / 1000,
  }
}

function requireLength(name: string, valueMm: number): number {
  return requireNumber(name, valueMm, { above: 0, atMost: MAX_LENGTH_MM, unit: 'mm' })
}
