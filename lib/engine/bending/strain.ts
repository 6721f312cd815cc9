import { requireNumber } from '../numerics'
import { findAxisUm, type YieldScale } from './bent-state'
import type { BondedSection } from './section'

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
export function computeBendStrain(
  section: BondedSection,
  insideRadiusMm: number,
  loading: Loading = 'once',
): BendStrain {
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

/** Secant steps end with one that moves the radius by less than this share: what is left then is far less, and a former far coarser. */
const RADIUS_TOLERANCE = 1e-9
/** Halving alone would end in 40. */
const MAX_STEPS = 100

/**
 * Smallest inside radius at which no conductor face passes its allowable strain.
 *
 * Model    the deciding strain of computeBendStrain falls with the radius, so that the answer is the only one. With the axis where it is at
 *          some radius, a face would have its allowable at |y - y_0| / eps - y_0: the answer is the radius that gives itself, found by the
 *          secant method kept within a bracket. Where nothing yields there it is R_i = |y - y_n| / eps_allowable - y_n, the largest over
 *          all conductor faces, not below 0.
 * @param allowableStrainPct  > 0 to 100, or a function that gives it per conductor id (null: that one does not count)
 * @param startMm  a radius nearby, to begin the search at
 * @returns null when no conductor counts
 * @throws  RangeError if an allowable breaks its range
 * Source   as computeBendStrain
 */
export function computeMinRadiusForStrain(
  section: BondedSection,
  allowableStrainPct: number | ((id: string) => number | null),
  loading: Loading = 'once',
  startMm = 0,
): RadiusForStrain | null {
  const faces = listFaces(section, allowableStrainPct)
  const [first] = faces
  if (first === undefined) return null
  const axisAt = (radiusUm: number, startUm?: number): number =>
    findAxisUm(section.stack, { insideRadiusUm: radiusUm }, yieldScaleOf(loading), startUm)
  const describe = (radiusUm: number, axisUm: number): RadiusForStrain => {
    const { id, face } = findDecidingFace(faces, axisUm, first)
    return { id, face, minInsideRadiusMm: radiusUm / UM_PER_MM, anyRadius: false }
  }
  const y_n = section.neutralAxisUm
  const elasticUm = radiusOf(findDecidingFace(faces, y_n, first), y_n)
  if (elasticUm > 0 && axisAt(elasticUm) === y_n) return describe(elasticUm, y_n)

  let low = 0
  let high = Number.POSITIVE_INFINITY
  let radiusUm = startMm > 0 ? startMm * UM_PER_MM : Math.max(elasticUm, section.totalThicknessUm)
  let axisUm = axisAt(radiusUm)
  let previous: { radiusUm: number; excessUm: number } | null = null
  let isFlatKnown = false
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const wantedUm = radiusOf(findDecidingFace(faces, axisUm, first), axisUm)
    const excessUm = wantedUm - radiusUm
    if (excessUm === 0) break
    if (excessUm > 0) low = radiusUm
    else high = radiusUm
    let nextUm = wantedUm
    if (previous !== null && previous.excessUm !== excessUm) {
      nextUm = radiusUm - (excessUm * (radiusUm - previous.radiusUm)) / (excessUm - previous.excessUm)
    }
    if (nextUm <= 0 && low === 0 && !isFlatKnown) {
      const foldedUm = axisAt(0)
      if (radiusOf(findDecidingFace(faces, foldedUm, first), foldedUm) <= 0) {
        return { ...describe(0, foldedUm), anyRadius: true }
      }
      isFlatKnown = true
    }
    if (!(nextUm > low && nextUm < high)) nextUm = wantedUm
    if (!(nextUm > low && nextUm < high)) nextUm = high === Number.POSITIVE_INFINITY ? 2 * low : low + (high - low) / 2
    previous = { radiusUm, excessUm }
    const isClose = Math.abs(nextUm - radiusUm) <= RADIUS_TOLERANCE * radiusUm
    radiusUm = nextUm
    if (isClose) break
    axisUm = axisAt(radiusUm, axisUm)
  }
  return describe(radiusUm, axisUm)
}

interface AllowedFace {
  readonly id: string
  readonly face: Face
  readonly depthUm: number
  readonly allowablePct: number
}

function listFaces(
  section: BondedSection,
  allowableStrainPct: number | ((id: string) => number | null),
): readonly AllowedFace[] {
  const faces: AllowedFace[] = []
  for (const { id, isConductor, innerDepthUm, outerDepthUm } of section.layers) {
    if (!isConductor) continue
    const allowablePct = typeof allowableStrainPct === 'number' ? allowableStrainPct : allowableStrainPct(id)
    if (allowablePct === null) continue
    requireNumber('allowableStrainPct', allowablePct, { above: 0, atMost: 100, unit: '%' })
    faces.push({ id, face: 'inner', depthUm: innerDepthUm, allowablePct })
    faces.push({ id, face: 'outer', depthUm: outerDepthUm, allowablePct })
  }
  return faces
}

/** Inside radius at which a face has its allowable while the axis is where it is. */
function radiusOf({ depthUm, allowablePct }: AllowedFace, axisUm: number): number {
  return (PCT * Math.abs(depthUm - axisUm)) / allowablePct - axisUm
}

function findDecidingFace(faces: readonly AllowedFace[], axisUm: number, first: AllowedFace): AllowedFace {
  let deciding = first
  let largestUm = radiusOf(first, axisUm)
  for (const face of faces) {
    const radiusUm = radiusOf(face, axisUm)
    if (radiusUm <= largestUm) continue
    largestUm = radiusUm
    deciding = face
  }
  return deciding
}
