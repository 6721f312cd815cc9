import { findRoot, requireNumber } from '../numerics'
import { type Bending, findAxisUm, type YieldScale } from './bent-state'
import type { Section } from './section'

export type Face = 'inner' | 'outer'

/** How a bend is loaded: formed and left, or flexed from flat to the radius and back, or to both sides of flat. */
export type Loading = 'once' | 'one-way' | 'reversed'

/** Strain at both faces of one conductor layer; tension positive. */
export interface ConductorStrain {
  id: string
  innerDepthUm: number
  outerDepthUm: number
  /** When first bent to the radius. */
  innerFacePct: number
  outerFacePct: number
  /** The larger magnitude of both faces, when first bent. */
  peakPct: number
  /** Greatest less least strain of a cycle at the worse face; null where the bend is formed once. */
  rangePct: number | null
  /** What an allowable strain stands against: the peak where formed once, the range one way, half of it where reversed. */
  decidingPct: number
  /** Bound of the strain over the cycles, the mean strain that stays in the flat part included. */
  greatestPct: number
}

export interface BendStrain {
  insideRadiusMm: number
  /** Depth without strain when first bent. */
  axisUm: number
  /** Depth without strain of what an allowable stands against: of the range of a cycle one way, else as axisUm. */
  decidingAxisUm: number
  /** The same while nothing yields. */
  elasticAxisUm: number
  /** Of the axis, 1 / (R_i + y_0). */
  curvaturePerMm: number
  innerSurfacePct: number
  outerSurfacePct: number
  /** As decidingPct of conductors, for the worse one of both surfaces. */
  decidingSurfacePct: number
  /** Innermost first. */
  conductors: ConductorStrain[]
  /** Where copper strains most in the first bend; null in a section without conductors. */
  governing: { id: string; face: Face; strainPct: number } | null
}

const UM_PER_MM = 1000
const PCT = 100
/** A kilometre: past it a bend is flat for every purpose here. */
const MAX_RADIUS_MM = 1e6
/** Greatest strain over the cycles by finite elements, over the greater of first peak and range. */
const GREATEST_OVER_CYCLES = 1.13

/** Checks an inside radius: 0 (folded on itself) to a kilometre. Throws RangeError naming the argument. */
export function requireInsideRadiusUm(insideRadiusMm: number): number {
  return requireNumber('insideRadiusMm', insideRadiusMm, { atLeast: 0, atMost: MAX_RADIUS_MM, unit: 'mm' }) * UM_PER_MM
}

/** The range of a one-way cycle follows the loading curve at twice its scale; everything else is the first bend. */
export function yieldScaleOf(loading: Loading): YieldScale {
  return loading === 'one-way' ? 2 : 1
}

/**
 * Strain at one depth of a section when it is first bent.
 *
 * Model    eps = (y - y_0) / (R_i + y_0): plane sections stay plane, the depth y_0 keeps its length
 * @param depthUm         from the inside face, 0 to the total thickness
 * @param insideRadiusMm  >= 0
 * @returns per cent, tension positive
 * @throws  RangeError naming the argument
 * Source   SOURCES.compositeBeam, SOURCES.plasticBending; check values in test/standards/bending
 */
export function strainAtDepthPct(section: Section, depthUm: number, insideRadiusMm: number): number {
  requireNumber('depthUm', depthUm, { atLeast: 0, atMost: section.totalThicknessUm, unit: 'um' })
  const insideRadiusUm = requireInsideRadiusUm(insideRadiusMm)
  const axisUm = findAxisUm(section.stack, { insideRadiusUm })
  return (PCT * (depthUm - axisUm)) / (insideRadiusUm + axisUm)
}

/**
 * Strain at the surfaces and at both faces of every conductor of a section bent to a radius.
 *
 * Model    first bend: axis of the formed state (findAxisUm). One way: the range is that of the formed state with every yield doubled;
 *          reversed: twice the strain of the formed state. While nothing yields all of them are the elastic result. The greatest strain
 *          over the cycles is at most 1.13 times the greater of first peak and range.
 * Holds    R_i / t of 5 and more, to accuracyOfStrainPct
 * @param insideRadiusMm  >= 0
 * @throws  RangeError naming the argument
 * Source   SOURCES.plasticBending, SOURCES.reversedYield; rule and factor SOURCES.finiteElementBending
 */
export function computeBendStrain(section: Section, insideRadiusMm: number, loading: Loading = 'once'): BendStrain {
  const insideRadiusUm = requireInsideRadiusUm(insideRadiusMm)
  const axisUm = findAxisUm(section.stack, { insideRadiusUm })
  const decidingAxisUm = loading === 'one-way' ? findAxisUm(section.stack, { insideRadiusUm }, 2) : axisUm
  const at = (depthUm: number, y0: number): number => (PCT * (depthUm - y0)) / (insideRadiusUm + y0)
  const conductors: ConductorStrain[] = []
  let governing: BendStrain['governing'] = null
  for (const { id, isConductor, innerDepthUm, outerDepthUm } of section.layers) {
    if (!isConductor) continue
    const innerFacePct = at(innerDepthUm, axisUm)
    const outerFacePct = at(outerDepthUm, axisUm)
    const face: Face = Math.abs(innerFacePct) > Math.abs(outerFacePct) ? 'inner' : 'outer'
    const strainPct = face === 'inner' ? innerFacePct : outerFacePct
    const peakPct = Math.abs(strainPct)
    const decidingPct = Math.max(Math.abs(at(innerDepthUm, decidingAxisUm)), Math.abs(at(outerDepthUm, decidingAxisUm)))
    const rangePct = loading === 'once' ? null : loading === 'one-way' ? decidingPct : 2 * decidingPct
    conductors.push({
      id,
      innerDepthUm,
      outerDepthUm,
      innerFacePct,
      outerFacePct,
      peakPct,
      rangePct,
      decidingPct,
      greatestPct: loading === 'once' ? peakPct : GREATEST_OVER_CYCLES * Math.max(peakPct, decidingPct),
    })
    if (governing === null || peakPct > Math.abs(governing.strainPct)) governing = { id, face, strainPct }
  }
  return {
    insideRadiusMm,
    axisUm,
    decidingAxisUm,
    elasticAxisUm: section.neutralAxisUm,
    curvaturePerMm: UM_PER_MM / (insideRadiusUm + axisUm),
    innerSurfacePct: at(0, axisUm),
    outerSurfacePct: at(section.totalThicknessUm, axisUm),
    decidingSurfacePct: Math.max(
      Math.abs(at(0, decidingAxisUm)),
      Math.abs(at(section.totalThicknessUm, decidingAxisUm)),
    ),
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

/** A billionth of the radius: far inside any former's tolerance. */
const RADIUS_TOLERANCE = 1e-9
/** Where the search ends that begins at a radius nearby. */
const NEXT_RADIUS = 1.3

/**
 * Smallest inside radius at which no conductor face passes its allowable strain.
 *
 * Model    the deciding strain of computeBendStrain falls with the radius: bracketed root. Where nothing yields at the answer it is
 *          R_i = |y - y_n| / eps_allowable - y_n, the largest over all conductor faces, not below 0.
 * @param allowableStrainPct  > 0 to 100, or a function that gives it per conductor id (null: that one does not count)
 * @param atLeastMm  a radius that the answer is known not to be below, to begin the search at
 * @returns null when no conductor counts
 * @throws  RangeError if an allowable breaks its range
 * Source   as computeBendStrain
 */
export function computeMinRadiusForStrain(
  section: Section,
  allowableStrainPct: number | ((id: string) => number | null),
  loading: Loading = 'once',
  atLeastMm = 0,
): RadiusForStrain | null {
  const faces: { id: string; face: Face; depthUm: number; allowable: number }[] = []
  for (const { id, isConductor, innerDepthUm, outerDepthUm } of section.layers) {
    if (!isConductor) continue
    const allowable = typeof allowableStrainPct === 'number' ? allowableStrainPct : allowableStrainPct(id)
    if (allowable === null) continue
    requireNumber('allowableStrainPct', allowable, { above: 0, atMost: 100, unit: '%' })
    faces.push({ id, face: 'inner', depthUm: innerDepthUm, allowable })
    faces.push({ id, face: 'outer', depthUm: outerDepthUm, allowable })
  }
  const [first] = faces
  if (first === undefined) return null
  const yieldScale = yieldScaleOf(loading)
  const worstAt = (axisUm: number, radiusUm: number): { share: number; worst: typeof first } => {
    let share = -1
    let worst = first
    for (const each of faces) {
      const own = (PCT * Math.abs(each.depthUm - axisUm)) / (radiusUm + axisUm) / each.allowable
      if (own > share) {
        share = own
        worst = each
      }
    }
    return { share, worst }
  }
  const axisAt = (bending: Bending): number => findAxisUm(section.stack, bending, yieldScale)
  const describe = (radiusUm: number): RadiusForStrain => {
    const { id, face } = worstAt(axisAt({ insideRadiusUm: radiusUm }), radiusUm).worst
    return { id, face, minInsideRadiusMm: radiusUm / UM_PER_MM, anyRadius: false }
  }

  const y_n = section.neutralAxisUm
  let elasticUm = Number.NEGATIVE_INFINITY
  for (const { depthUm, allowable } of faces) {
    elasticUm = Math.max(elasticUm, (PCT * Math.abs(depthUm - y_n)) / allowable - y_n)
  }
  if (elasticUm > 0 && axisAt({ insideRadiusUm: elasticUm }) === y_n) return describe(elasticUm)
  const excess = (radiusUm: number): number => worstAt(axisAt({ insideRadiusUm: radiusUm }), radiusUm).share - 1
  const knownUm = atLeastMm * UM_PER_MM
  const low = knownUm > 0 && excess(knownUm) > 0 ? knownUm : 0
  if (low === 0 && excess(0) <= 0) return { ...describe(0), anyRadius: true }
  let high = low > 0 ? NEXT_RADIUS * low : Math.max(elasticUm, section.totalThicknessUm)
  while (excess(high) > 0) high *= 2
  return describe(findRoot(excess, { low, high, tolerance: RADIUS_TOLERANCE * high }).root)
}
