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
  /** Magnitudes of the worse face: at nominal, at the most favourable corner, at the least favourable one. */
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
/** Corners settle after one or two corrections; more would mean a tie that no longer matters. */
const MAX_CORNER_MOVES = 6

/**
 * Range of strain at both faces of every conductor when thicknesses and radius move within their tolerances.
 *
 * Model    the strain (y - y_n) / (R_i + y_n) is pushed to its extreme corner: each thickness and the radius goes to the
 *          end that its partial derivative points to, and the derivatives are taken anew at that corner until none
 *          changes sign. d y_n / d t_k = (E_k (y_k - y_n) + S_k) / S, y_k the outer depth of layer k, S_k the stiffness
 *          E t outside it, S of the whole.
 * Holds    tolerances independent and below the thickness; moduli and coverage at nominal. Equal to trying all corners
 *          (compared in test/unit/engine). Costs (faces x layers), not 2^layers.
 * @param layers          innermost first; minusUm >= 0 and below thicknessUm, plusUm >= 0
 * @param insideRadiusMm  >= 0, with radiusMinusMm (not above it) and radiusPlusMm
 * @returns one entry per conductor, innermost first
 * @throws  RangeError naming layer and number
 * Source   SOURCES.compositeBeam, derivative by hand
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

/** Largest (direction 1) or smallest (-1) strain at the face that has `layersInside` layers inside it. */
function extremeStrain(
  coordinates: Coordinate[],
  radius: Omit<Coordinate, 'modulusGpa'>,
  layersInside: number,
  direction: 1 | -1,
): number {
  let extreme = toNominal(coordinates, radius, layersInside)
  for (let move = 0; move < MAX_CORNER_MOVES; move += 1) {
    const { axisUm, faceUm, stretching } = locate(coordinates, radius.valueUm, layersInside)
    const axisRadiusUm = radius.valueUm + axisUm
    const faceRadiusUm = radius.valueUm + faceUm
    let moved = false
    let depthUm = 0
    let outsideStretching = stretching
    for (const [index, each] of coordinates.entries()) {
      depthUm += each.valueUm
      outsideStretching -= each.modulusGpa * each.valueUm
      const axisSlope = (each.modulusGpa * (depthUm - axisUm) + outsideStretching) / stretching
      // Sign of d eps / d t_k; the positive divisor (R + y_n)^2 is left out.
      const slope = (index < layersInside ? axisRadiusUm : 0) - axisSlope * faceRadiusUm
      const targetUm = slope * direction > 0 ? each.highUm : each.lowUm
      // depthUm and outsideStretching already hold this layer's old thickness: the pass sees one corner throughout.
      if (targetUm !== each.valueUm) {
        each.valueUm = targetUm
        moved = true
      }
    }
    const radiusTargetUm = (faceUm - axisUm) * direction > 0 ? radius.lowUm : radius.highUm
    if (radiusTargetUm !== radius.valueUm) {
      radius.valueUm = radiusTargetUm
      moved = true
    }
    if (!moved) break
    const { strain } = locate(coordinates, radius.valueUm, layersInside)
    extreme = direction > 0 ? Math.max(extreme, strain) : Math.min(extreme, strain)
  }
  return extreme
}

function locate(
  coordinates: readonly Coordinate[],
  radiusUm: number,
  layersInside: number,
): { axisUm: number; faceUm: number; stretching: number; strain: number } {
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
  return { axisUm, faceUm, stretching, strain: (faceUm - axisUm) / (radiusUm + axisUm) }
}
