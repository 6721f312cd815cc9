import { findRoot, requireNumber } from '../numerics'
import { curvatureAt, findAxisUm, momentNPerMmWidth } from './bent-state'
import type { BondedSection } from './section'
import { requireInsideRadiusUm } from './strain'

export interface BentState {
  /** Depth at which the strain is 0; wanders from the elastic axis as copper yields. */
  axisUm: number
  curvaturePerMm: number
  momentNPerMmWidth: number
}

/** A section bent to a radius with copper past yield where the strain asks for it. */
export interface FormedState extends BentState {
  insideRadiusMm: number
  /** Share of the section's copper (and any other material with a yield) that is past yield, by area. */
  yieldedFraction: number
  /** Smallest inside radius at which nothing yields; null where no layer has a yield. */
  firstYieldInsideRadiusMm: number | null
}

export interface Springback {
  formed: FormedState
  /** Curvature left when the part is let go: angle per flat length. */
  relaxedCurvaturePerMm: number
  /** Null where the part springs back flat. */
  relaxedInsideRadiusMm: number | null
  relaxedAngleDeg: number
  /** Share of the formed angle that is lost: 1 is fully elastic. */
  springbackFraction: number
  /** True where letting go yields copper again in the opposite sense. */
  reverseYield: boolean
}

/** Curvature below this share of the formed one is rounding, not a set. */
const FLAT_FRACTION = 1e-9

/**
 * Bending a section to an inside radius, with yielding layers elastic-plastic.
 *
 * Model    bilinear stress (elastic, then yield with a lesser slope), no axial force
 * Holds    bending in one go from flat; materials without a yield stay elastic (polyimide yields near 3 %)
 * @param insideRadiusMm  >= 0
 * @throws  RangeError naming the argument
 * Source   SOURCES.plasticBending; check values in test/standards/bending
 */
export function computeFormedState(section: BondedSection, insideRadiusMm: number): FormedState {
  const state = bendTo(section, { insideRadiusUm: requireInsideRadiusUm(insideRadiusMm) })
  const yieldCurvature = firstYieldCurvaturePerUm(section)
  return {
    ...state,
    insideRadiusMm,
    yieldedFraction: yieldedFraction(section, state),
    firstYieldInsideRadiusMm:
      yieldCurvature === null ? null : Math.max(0, 1 / yieldCurvature - section.neutralAxisUm) / 1000,
  }
}

function bendTo({ stack }: BondedSection, bending: Parameters<typeof findAxisUm>[1]): BentState {
  const axisUm = findAxisUm(stack, bending)
  const curvaturePerUm = curvatureAt(bending, axisUm)
  return {
    axisUm,
    curvaturePerMm: curvaturePerUm * 1000,
    momentNPerMmWidth: momentNPerMmWidth(stack, axisUm, curvaturePerUm),
  }
}

/**
 * Radius and angle that a formed bend keeps when it is let go.
 *
 * Model    letting go follows the loading curve at twice its scale (reversed yield included): with m(kappa) the moment-
 *          curvature relation, 2 m(d kappa / 2) = m(kappa_formed), relaxed curvature = kappa_formed - d kappa. Where
 *          nothing yields again this is the plain kappa_formed - M / D.
 * Holds    kinematic hardening or perfect plasticity; creep and adhesive flow, which let a part set further with time
 *          and heat, are not in it. Curvature is angle per flat length, so that the angle goes with it.
 * @param insideRadiusMm  of the former, >= 0
 * @param angleDeg        formed angle, > 0
 * @throws  RangeError naming the argument
 * Source   SOURCES.springback (homogeneous sheet), SOURCES.reversedYield; check values in test/standards/bending
 */
export function computeSpringback(section: BondedSection, insideRadiusMm: number, angleDeg: number): Springback {
  requireNumber('angleDeg', angleDeg, { above: 0, atMost: 36000, unit: 'degrees' })
  const formed = computeFormedState(section, insideRadiusMm)
  const { curvaturePerMm: formedCurvature } = formed
  const halfMoment = formed.momentNPerMmWidth / 2
  const yieldCurvature = firstYieldCurvaturePerUm(section)
  const yieldMoment =
    yieldCurvature === null ? Number.POSITIVE_INFINITY : section.rigidityNmm2PerMm * yieldCurvature * 1000
  const reverseYield = halfMoment > yieldMoment
  const halfDrop = reverseYield
    ? stateForMoment(section, halfMoment, (yieldCurvature ?? 0) * 1000, formedCurvature)
    : { curvaturePerMm: halfMoment / section.rigidityNmm2PerMm, axisUm: section.neutralAxisUm }
  const dropPerMm = 2 * halfDrop.curvaturePerMm
  const keptFraction = 1 - dropPerMm / formedCurvature
  const flat = formed.yieldedFraction === 0 || keptFraction < FLAT_FRACTION
  const relaxedCurvaturePerMm = flat ? 0 : keptFraction * formedCurvature
  // Length of the inside face over the angle: it was kappa R per unit of flat length, and letting go stretches it.
  const insideStretch = dropPerMm * (halfDrop.axisUm / 1000)
  return {
    formed,
    relaxedCurvaturePerMm,
    relaxedInsideRadiusMm: flat ? null : (formedCurvature * insideRadiusMm + insideStretch) / relaxedCurvaturePerMm,
    relaxedAngleDeg: flat ? 0 : keptFraction * angleDeg,
    springbackFraction: flat ? 1 : 1 - keptFraction,
    reverseYield,
  }
}

function stateForMoment(section: BondedSection, momentNPerMmWidth: number, low: number, high: number): BentState {
  const stateAt = (curvaturePerMm: number): BentState => bendTo(section, { curvaturePerUm: curvaturePerMm / 1000 })
  const { root } = findRoot((curvature) => stateAt(curvature).momentNPerMmWidth - momentNPerMmWidth, {
    low,
    high,
    // A millionth of the formed curvature: far below what any former or material figure is known to.
    tolerance: 1e-6 * high,
  })
  return stateAt(root)
}

function firstYieldCurvaturePerUm(section: BondedSection): number | null {
  let least: number | null = null
  section.layers.forEach(({ innerDepthUm, outerDepthUm }, at) => {
    const armUm = Math.max(
      Math.abs(innerDepthUm - section.neutralAxisUm),
      Math.abs(outerDepthUm - section.neutralAxisUm),
    )
    for (const { yieldStrain } of section.stack.strips[at] ?? []) {
      if (!Number.isFinite(yieldStrain)) continue
      const curvature = yieldStrain / armUm
      if (least === null || curvature < least) least = curvature
    }
  })
  return least
}

function yieldedFraction({ layers, stack }: BondedSection, { axisUm, curvaturePerMm }: BentState): number {
  let area = 0
  let yielded = 0
  layers.forEach(({ innerDepthUm, outerDepthUm }, at) => {
    for (const { widthFraction, yieldStrain } of stack.strips[at] ?? []) {
      if (!Number.isFinite(yieldStrain)) continue
      // The elastic core reaches this far to either side of the axis.
      const coreUm = (1000 * yieldStrain) / curvaturePerMm
      const coreInStripUm = Math.max(
        0,
        Math.min(outerDepthUm, axisUm + coreUm) - Math.max(innerDepthUm, axisUm - coreUm),
      )
      area += widthFraction * (outerDepthUm - innerDepthUm)
      yielded += widthFraction * (outerDepthUm - innerDepthUm - coreInStripUm)
    }
  })
  // Rounding of the core's edges must not make an elastic section look yielded.
  return area === 0 || yielded / area < Number.EPSILON * 16 ? 0 : yielded / area
}
