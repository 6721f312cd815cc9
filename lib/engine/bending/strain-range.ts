import { requireNumber } from '../numerics'
import { type BendLayer, effectiveModulusGpa } from './layers'
import { requireInsideRadiusUm } from './strain'

/** A layer with how far its thickness may fall short of, or exceed, what it states. */
export interface TolerancedLayer extends BendLayer {
  /** Below thicknessUm. */
  minusUm: number
  plusUm: number
}

/** Strain over the tolerance range at one conductor face, tension positive. */
export interface FaceRange {
  nominalPct: number
  minPct: number
  maxPct: number
}

export interface ConductorStrainRange {
  id: string
  inner: FaceRange
  outer: FaceRange
  /**
   * Magnitudes of the worse face: at nominal; a bound from below, each face at its own most favourable corner; and at
   * the least favourable corner.
   */
  peakNominalPct: number
  peakBestPct: number
  peakWorstPct: number
}

interface Coordinate {
  modulusGpa: number
  nominalUm: number
  lowUm: number
  highUm: number
  valueUm: number
}

const PCT = 100
const UM_PER_MM = 1000
/** Corners settle after two or three sweeps; more would mean a tie that no longer matters. */
const MAX_SWEEPS = 8
/** Gain below which a move counts as rounding: a strain of 1e-14 is a millionth of a millionth of a per cent. */
const TIE_STRAIN = 1e-15

/**
 * Range of strain at both faces of every conductor when thicknesses and radius move within their tolerances.
 *
 * Model    the strain (y - y_n) / (R_i + y_n) is driven to its extreme corner one dimension at a time: each thickness, and
 *          then the radius, goes to whichever end makes the strain more extreme, sweep after sweep, until none moves.
 * Holds    tolerances independent and below the thickness; moduli and coverage at nominal. The face with the largest
 *          strain comes out as trying all corners gives it; a face close to the axis may stop at a lesser corner, by at
 *          most 0.3 % of the largest strain (24,000 random stacks, test/unit/engine). Costs (faces x layers), not 2^layers.
 * @param layers          innermost first; minusUm >= 0 and below thicknessUm, plusUm >= 0
 * @param insideRadiusMm  >= 0, with radiusMinusMm (not above it) and radiusPlusMm
 * @returns one entry per conductor, innermost first
 * @throws  RangeError naming layer and number
 * Source   SOURCES.compositeBeam
 */
export function computeStrainRange({
  layers,
  insideRadiusMm,
  radiusMinusMm,
  radiusPlusMm,
}: {
  layers: readonly TolerancedLayer[]
  insideRadiusMm: number
  radiusMinusMm: number
  radiusPlusMm: number
}): ConductorStrainRange[] {
  if (layers.length === 0) throw new RangeError('layers must hold at least one layer; found none')
  const radiusUm = requireInsideRadiusUm(insideRadiusMm)
  requireNumber('radiusMinusMm', radiusMinusMm, { atLeast: 0, atMost: insideRadiusMm, unit: 'mm' })
  requireNumber('radiusPlusMm', radiusPlusMm, { atLeast: 0, atMost: 1e6, unit: 'mm' })
  const radius: Omit<Coordinate, 'modulusGpa'> = {
    nominalUm: radiusUm,
    lowUm: radiusUm - radiusMinusMm * UM_PER_MM,
    highUm: radiusUm + radiusPlusMm * UM_PER_MM,
    valueUm: radiusUm,
  }
  const coordinates: Coordinate[] = layers.map((layer, index) => {
    const name = `layers[${index}]`
    const modulusGpa = effectiveModulusGpa(name, layer)
    requireNumber(`${name}.minusUm`, layer.minusUm, { atLeast: 0, below: layer.thicknessUm, unit: 'um' })
    requireNumber(`${name}.plusUm`, layer.plusUm, { atLeast: 0, atMost: 1e6, unit: 'um' })
    return {
      modulusGpa,
      nominalUm: layer.thicknessUm,
      lowUm: layer.thicknessUm - layer.minusUm,
      highUm: layer.thicknessUm + layer.plusUm,
      valueUm: layer.thicknessUm,
    }
  })
  const ranges: ConductorStrainRange[] = []
  for (const [index, layer] of layers.entries()) {
    if (layer.conductor === undefined) continue
    const inner = rangeAtFace(coordinates, radius, index)
    const outer = rangeAtFace(coordinates, radius, index + 1)
    ranges.push({
      id: layer.id,
      inner,
      outer,
      peakNominalPct: Math.max(Math.abs(inner.nominalPct), Math.abs(outer.nominalPct)),
      peakBestPct: Math.max(leastMagnitudePct(inner), leastMagnitudePct(outer)),
      peakWorstPct: Math.max(greatestMagnitudePct(inner), greatestMagnitudePct(outer)),
    })
  }
  return ranges
}

function leastMagnitudePct({ minPct, maxPct }: FaceRange): number {
  return minPct <= 0 && maxPct >= 0 ? 0 : Math.min(Math.abs(minPct), Math.abs(maxPct))
}

function greatestMagnitudePct({ minPct, maxPct }: FaceRange): number {
  return Math.max(Math.abs(minPct), Math.abs(maxPct))
}

function rangeAtFace(
  coordinates: Coordinate[],
  radius: Omit<Coordinate, 'modulusGpa'>,
  layersInside: number,
): FaceRange {
  return {
    nominalPct: toNominal(coordinates, radius, layersInside) * PCT,
    minPct: extremeStrain(coordinates, radius, layersInside, -1) * PCT,
    maxPct: extremeStrain(coordinates, radius, layersInside, 1) * PCT,
  }
}

function toNominal(coordinates: Coordinate[], radius: Omit<Coordinate, 'modulusGpa'>, layersInside: number): number {
  for (const each of coordinates) each.valueUm = each.nominalUm
  radius.valueUm = radius.nominalUm
  return locate(coordinates, radius.valueUm, layersInside).strain
}

/**
 * Largest (direction 1) or smallest (-1) strain at the face that has `layersInside` layers inside it. Two starts, the
 * second with everything inside the face thick and everything outside it thin (or the reverse), because one alone
 * stops at a lesser corner now and then where a face lies close to the axis.
 */
function extremeStrain(
  coordinates: Coordinate[],
  radius: Omit<Coordinate, 'modulusGpa'>,
  layersInside: number,
  direction: 1 | -1,
): number {
  const nominal = toNominal(coordinates, radius, layersInside)
  const fromNominal = climb(coordinates, radius, layersInside, direction)
  for (const [index, each] of coordinates.entries()) {
    each.valueUm = index < layersInside === direction > 0 ? each.highUm : each.lowUm
  }
  radius.valueUm = radius.nominalUm
  const fromCorner = climb(coordinates, radius, layersInside, direction)
  return direction > 0 ? Math.max(nominal, fromNominal, fromCorner) : Math.min(nominal, fromNominal, fromCorner)
}

function climb(
  coordinates: Coordinate[],
  radius: Omit<Coordinate, 'modulusGpa'>,
  layersInside: number,
  direction: 1 | -1,
): number {
  let reached = Number.NaN
  for (let sweep = 0; sweep < MAX_SWEEPS; sweep += 1) {
    const moved = sweepToBetterEnds(coordinates, radius, layersInside, direction)
    const { axisUm, faceUm, strain } = locate(coordinates, radius.valueUm, layersInside)
    reached = strain
    const radiusTargetUm = (faceUm - axisUm) * direction > 0 ? radius.lowUm : radius.highUm
    if (!moved && radiusTargetUm === radius.valueUm) break
    radius.valueUm = radiusTargetUm
  }
  return reached
}

/** One pass from the innermost layer outward; true where a layer moved. */
function sweepToBetterEnds(
  coordinates: Coordinate[],
  radius: Omit<Coordinate, 'modulusGpa'>,
  layersInside: number,
  direction: 1 | -1,
): boolean {
  let { stretching, firstMoment, faceUm } = locate(coordinates, radius.valueUm, layersInside)
  let innerUm = 0
  let outsideStretching = stretching
  let moved = false
  for (const [index, each] of coordinates.entries()) {
    outsideStretching -= each.modulusGpa * each.valueUm
    let best = { valueUm: each.valueUm, stretching, firstMoment, faceUm, score: Number.NEGATIVE_INFINITY }
    for (const valueUm of [each.valueUm, each.lowUm, each.highUm]) {
      const changeUm = valueUm - each.valueUm
      // The layer grows outward from innerUm and shifts all that lies outside it.
      const trialStretching = stretching + each.modulusGpa * changeUm
      const trialMoment =
        firstMoment +
        each.modulusGpa * changeUm * (innerUm + (valueUm + each.valueUm) / 2) +
        outsideStretching * changeUm
      const trialFaceUm = index < layersInside ? faceUm + changeUm : faceUm
      const axisUm = trialMoment / trialStretching
      const score = (direction * (trialFaceUm - axisUm)) / (radius.valueUm + axisUm)
      // A tie within rounding stays where it is, so that the sweeps come to rest.
      if (score > best.score + TIE_STRAIN) {
        best = { valueUm, stretching: trialStretching, firstMoment: trialMoment, faceUm: trialFaceUm, score }
      }
    }
    if (best.valueUm !== each.valueUm) moved = true
    each.valueUm = best.valueUm
    stretching = best.stretching
    firstMoment = best.firstMoment
    faceUm = best.faceUm
    innerUm += each.valueUm
  }
  return moved
}

function locate(
  coordinates: readonly Coordinate[],
  radiusUm: number,
  layersInside: number,
): { axisUm: number; faceUm: number; stretching: number; firstMoment: number; strain: number } {
  let depthUm = 0
  let faceUm = 0
  let stretching = 0
  let firstMoment = 0
  for (const [index, { modulusGpa, valueUm }] of coordinates.entries()) {
    const stiffness = modulusGpa * valueUm
    stretching += stiffness
    firstMoment += stiffness * (depthUm + valueUm / 2)
    depthUm += valueUm
    if (index + 1 === layersInside) faceUm = depthUm
  }
  const axisUm = firstMoment / stretching
  return { axisUm, faceUm, stretching, firstMoment, strain: (faceUm - axisUm) / (radiusUm + axisUm) }
}
