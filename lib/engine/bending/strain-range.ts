import { requireNumber } from '../numerics'
import { type BendLayer, effectiveModulusGpa } from './layers'
import { computeSection } from './section'
import { computeBendStrain, requireInsideRadiusUm } from './strain'
import { type Coordinate, climbToExtreme, estimateExtremes, type RadiusRange } from './strain-corners'

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

const PCT = 100
const UM_PER_MM = 1000
/** Circuits have fewer conductor layers; beyond this only the conductors that can decide are searched, to keep cost linear. */
const SEARCHED_CONDUCTORS = 12

/**
 * Range of strain at both faces of every conductor when thicknesses and radius move within their tolerances.
 *
 * Model    the strain (y - y_n) / (R_i + y_n) at the corner of the tolerances where it is most extreme: found from the
 *          derivatives at nominal for every face, and by a search from corner to corner for the faces that matter
 * Holds    tolerances independent and below the thickness; moduli and coverage at nominal. The face with the largest
 *          strain comes out as trying all corners gives it; a face close to the axis may stop at a lesser corner, by at
 *          most 0.3 % of the largest strain (24,000 random stacks, test/unit/engine). With more than 12 conductors the
 *          search is for the innermost and the outermost one, which strain most.
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
  const radius: RadiusRange = {
    nominalUm: radiusUm,
    lowUm: radiusUm - radiusMinusMm * UM_PER_MM,
    highUm: radiusUm + radiusPlusMm * UM_PER_MM,
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
  const smallest = estimateExtremes(coordinates, radius, 'smallest')
  const largest = estimateExtremes(coordinates, radius, 'largest')
  const nominal = computeBendStrain(computeSection(layers), insideRadiusMm).conductors
  const conductorIndices = layers.flatMap((layer, index) => (layer.conductor === undefined ? [] : [index]))
  const rangeAt = (layersInside: number, nominalPct: number, isSearched: boolean): FaceRange => {
    const low = PCT * (smallest[layersInside] ?? Number.NaN)
    const high = PCT * (largest[layersInside] ?? Number.NaN)
    if (!isSearched) {
      return { nominalPct, minPct: Math.min(low, nominalPct), maxPct: Math.max(high, nominalPct) }
    }
    return {
      nominalPct,
      minPct: Math.min(low, nominalPct, PCT * climbToExtreme(coordinates, radius, layersInside, 'smallest')),
      maxPct: Math.max(high, nominalPct, PCT * climbToExtreme(coordinates, radius, layersInside, 'largest')),
    }
  }
  return nominal.map(({ id, innerFacePct, outerFacePct, peakPct }, order) => {
    const index = conductorIndices[order] ?? 0
    const isOutermost = order === 0 || order === nominal.length - 1
    const isSearched = nominal.length <= SEARCHED_CONDUCTORS || isOutermost
    const inner = rangeAt(index, innerFacePct, isSearched)
    const outer = rangeAt(index + 1, outerFacePct, isSearched)
    return {
      id,
      inner,
      outer,
      peakNominalPct: peakPct,
      peakBestPct: Math.max(leastMagnitudePct(inner), leastMagnitudePct(outer)),
      peakWorstPct: Math.max(greatestMagnitudePct(inner), greatestMagnitudePct(outer)),
    }
  })
}

function leastMagnitudePct({ minPct, maxPct }: FaceRange): number {
  return minPct <= 0 && maxPct >= 0 ? 0 : Math.min(Math.abs(minPct), Math.abs(maxPct))
}

function greatestMagnitudePct({ minPct, maxPct }: FaceRange): number {
  return Math.max(Math.abs(minPct), Math.abs(maxPct))
}
