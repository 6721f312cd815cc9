import { requireNumber } from '../numerics'
import type { Section } from './section'

export type Face = 'inner' | 'outer'

/** Strain at both faces of one conductor layer; tension positive. */
export interface ConductorStrain {
  id: string
  innerDepthUm: number
  outerDepthUm: number
  innerFacePct: number
  outerFacePct: number
  /** The larger magnitude of both faces. */
  peakPct: number
}

export interface BendStrain {
  insideRadiusMm: number
  neutralAxisUm: number
  /** Of the neutral axis, 1 / (R_i + y_n). */
  curvaturePerMm: number
  innerSurfacePct: number
  outerSurfacePct: number
  /** Innermost first. */
  conductors: ConductorStrain[]
  /** Where copper strains most; null in a section without conductors. */
  governing: { id: string; face: Face; strainPct: number } | null
}

const UM_PER_MM = 1000
const PCT = 100
/** A kilometre: past it a bend is flat for every purpose here. */
const MAX_RADIUS_MM = 1e6

/** Checks an inside radius: 0 (folded on itself) to a kilometre. Throws RangeError naming the argument. */
export function requireInsideRadiusUm(insideRadiusMm: number): number {
  return requireNumber('insideRadiusMm', insideRadiusMm, { atLeast: 0, atMost: MAX_RADIUS_MM, unit: 'mm' }) * UM_PER_MM
}

/**
 * Strain at one depth of a bent section.
 *
 * Model    eps = (y - y_n) / (R_i + y_n): plane sections stay plane, the neutral axis keeps its length
 * Holds    whatever the materials do, as long as the axis is where y_n says; for yielded copper see computeFormedState
 * @param depthUm         from the inside face, 0 to the total thickness
 * @param insideRadiusMm  >= 0
 * @returns per cent, tension positive
 * @throws  RangeError naming the argument
 * Source   SOURCES.compositeBeam; check values in test/standards/bending
 */
export function strainAtDepthPct(section: Section, depthUm: number, insideRadiusMm: number): number {
  requireNumber('depthUm', depthUm, { atLeast: 0, atMost: section.totalThicknessUm, unit: 'um' })
  const radiusUm = requireInsideRadiusUm(insideRadiusMm)
  return (PCT * (depthUm - section.neutralAxisUm)) / (radiusUm + section.neutralAxisUm)
}

/**
 * Strain at the surfaces and at both faces of every conductor of a section bent to a radius.
 *
 * @param insideRadiusMm  >= 0
 * @returns all faces, the curvature, and the face where copper strains most
 * @throws  RangeError naming the argument
 * Source   as strainAtDepthPct
 */
export function computeBendStrain(section: Section, insideRadiusMm: number): BendStrain {
  const axisRadiusUm = requireInsideRadiusUm(insideRadiusMm) + section.neutralAxisUm
  const at = (depthUm: number): number => (PCT * (depthUm - section.neutralAxisUm)) / axisRadiusUm
  const conductors: ConductorStrain[] = []
  let governing: BendStrain['governing'] = null
  for (const { id, isConductor, innerDepthUm, outerDepthUm } of section.layers) {
    if (!isConductor) continue
    const innerFacePct = at(innerDepthUm)
    const outerFacePct = at(outerDepthUm)
    const face: Face = Math.abs(innerFacePct) > Math.abs(outerFacePct) ? 'inner' : 'outer'
    const strainPct = face === 'inner' ? innerFacePct : outerFacePct
    const peakPct = Math.abs(strainPct)
    conductors.push({ id, innerDepthUm, outerDepthUm, innerFacePct, outerFacePct, peakPct })
    if (governing === null || peakPct > Math.abs(governing.strainPct)) governing = { id, face, strainPct }
  }
  return {
    insideRadiusMm,
    neutralAxisUm: section.neutralAxisUm,
    curvaturePerMm: UM_PER_MM / axisRadiusUm,
    innerSurfacePct: at(0),
    outerSurfacePct: at(section.totalThicknessUm),
    conductors,
    governing,
  }
}

export interface RadiusForStrain {
  minInsideRadiusMm: number
  /** The conductor face that decides. */
  id: string
  face: Face
  /** True where the strain stays within the allowable even when folded on itself; the radius is then 0. */
  anyRadius: boolean
}

/**
 * Smallest inside radius at which no conductor face passes its allowable strain.
 *
 * Model    R_i = |y - y_n| / eps_allowable - y_n, the largest over all conductor faces, not below 0
 * @param allowableStrainPct  > 0 to 100, or a function that gives it per conductor id (null: that one does not count)
 * @returns null when no conductor counts
 * @throws  RangeError if an allowable breaks its range
 * Source   as strainAtDepthPct, solved for the radius
 */
export function computeMinRadiusForStrain(
  section: Section,
  allowableStrainPct: number | ((id: string) => number | null),
): RadiusForStrain | null {
  let found: (RadiusForStrain & { unclampedUm: number }) | null = null
  for (const { id, isConductor, innerDepthUm, outerDepthUm } of section.layers) {
    if (!isConductor) continue
    const allowable = typeof allowableStrainPct === 'number' ? allowableStrainPct : allowableStrainPct(id)
    if (allowable === null) continue
    requireNumber('allowableStrainPct', allowable, { above: 0, atMost: 100, unit: '%' })
    const innerArmUm = Math.abs(innerDepthUm - section.neutralAxisUm)
    const outerArmUm = Math.abs(outerDepthUm - section.neutralAxisUm)
    const face: Face = innerArmUm > outerArmUm ? 'inner' : 'outer'
    const unclampedUm = (PCT * Math.max(innerArmUm, outerArmUm)) / allowable - section.neutralAxisUm
    if (found === null || unclampedUm > found.unclampedUm) {
      found = {
        id,
        face,
        unclampedUm,
        minInsideRadiusMm: Math.max(0, unclampedUm) / UM_PER_MM,
        anyRadius: unclampedUm <= 0,
      }
    }
  }
  if (found === null) return null
  const { unclampedUm: _, ...radius } = found
  return radius
}
