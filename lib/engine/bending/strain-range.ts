import { requireNumber } from '../numerics'
import { type LayerConstant, readConstant, withConstants } from './constants'
import { findExtremes, type Knob } from './extremes'
import { type BendLayer, effectiveModulusGpa } from './layers'
import { type Loading, requireInsideRadiusUm, yieldScaleOf } from './strain'
import { requireYields } from './strips'

export interface ConstantSpread {
  readonly constant: LayerConstant
  /** Not above what the layer has. */
  readonly low: number
  /** Not below it. */
  readonly high: number
}

/** A layer with how far its thickness may fall short of, or exceed, what it states, and its constants' spreads. */
export interface TolerancedLayer extends BendLayer {
  /** Below thicknessUm. */
  minusUm: number
  plusUm: number
  spreads?: readonly ConstantSpread[]
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

interface StrainRangeInputs {
  layers: readonly TolerancedLayer[]
  insideRadiusMm: number
  radiusMinusMm: number
  radiusPlusMm: number
  loading?: Loading
}

/**
 * Range of the deciding strain at both faces of every conductor, and at both surfaces of the stack, when thicknesses, radius and constants move within their limits.
 *
 * Model    the strain of computeBendStrain at the corner of the limits where it is most extreme, found for every face from corner to corner
 *          by the signs of its derivatives (extremes.ts)
 * Holds    limits independent of each other and tolerances below the thickness. The face with the largest strain comes out as trying all
 *          corners gives it; a face close to the axis may stop at a lesser corner, by at most 0.3 % of the largest strain (random stacks in
 *          test/unit/engine). With more than 12 conductors the search is for the innermost and the outermost one, which strain most.
 * @param layers          innermost first; minusUm >= 0 and below thicknessUm, plusUm >= 0
 * @param insideRadiusMm  >= 0, with radiusMinusMm (not above it) and radiusPlusMm
 * @returns one entry per conductor, innermost first, and the surfaces
 * @throws  RangeError naming layer and number
 * Source   as computeBendStrain
 */
export function computeStrainRanges({
  layers,
  insideRadiusMm,
  radiusMinusMm,
  radiusPlusMm,
  loading = 'once',
}: StrainRangeInputs): { conductors: ConductorStrainRange[]; surfaces: { inner: FaceRange; outer: FaceRange } } {
  if (layers.length === 0) throw new RangeError('layers must hold at least one layer; found none')
  const radiusUm = requireInsideRadiusUm(insideRadiusMm)
  requireNumber('radiusMinusMm', radiusMinusMm, { atLeast: 0, atMost: insideRadiusMm, unit: 'mm' })
  requireNumber('radiusPlusMm', radiusPlusMm, { atLeast: 0, atMost: 1e6, unit: 'mm' })
  const knobs = listKnobs(layers, {
    lowUm: radiusUm - radiusMinusMm * UM_PER_MM,
    nominalUm: radiusUm,
    highUm: radiusUm + radiusPlusMm * UM_PER_MM,
  })
  // A face lies outside as many layers as are inside it.
  const indices = layers.flatMap((layer, index) => (layer.conductor === undefined ? [] : [index]))
  const faces = indices.flatMap((index) => [index, index + 1])
  const surfaces = [0, layers.length]
  const isEverySearched = indices.length <= SEARCHED_CONDUCTORS
  const searched = new Set([...(isEverySearched ? faces : [...faces.slice(0, 2), ...faces.slice(-2)]), ...surfaces])
  const extremes = findExtremes({
    layers,
    insideRadiusUm: radiusUm,
    yieldScale: yieldScaleOf(loading),
    knobs,
    faces: [...faces, ...surfaces],
    searched: [...searched],
  })
  const rangeAt = (at: number): FaceRange => {
    const extreme = extremes[at]
    if (extreme === undefined) throw new RangeError(`no range for face ${at}`)
    return {
      nominalPct: PCT * extreme.nominal,
      minPct: PCT * extreme.smallest,
      maxPct: PCT * extreme.largest,
    }
  }
  const conductors = indices.map((index, order) => {
    const inner = rangeAt(2 * order)
    const outer = rangeAt(2 * order + 1)
    return {
      id: layers[index]?.id ?? '',
      inner,
      outer,
      peakNominalPct: Math.max(Math.abs(inner.nominalPct), Math.abs(outer.nominalPct)),
      peakBestPct: Math.max(leastMagnitudePct(inner), leastMagnitudePct(outer)),
      peakWorstPct: Math.max(greatestMagnitudePct(inner), greatestMagnitudePct(outer)),
    }
  })
  return { conductors, surfaces: { inner: rangeAt(faces.length), outer: rangeAt(faces.length + 1) } }
}

function listKnobs(
  layers: readonly TolerancedLayer[],
  radius: { lowUm: number; nominalUm: number; highUm: number },
): Knob[] {
  const knobs: Knob[] = []
  for (const [layerIndex, layer] of layers.entries()) {
    const name = `layers[${layerIndex}]`
    effectiveModulusGpa(name, layer)
    const { thicknessUm, minusUm, plusUm, spreads = [] } = layer
    requireNumber(`${name}.minusUm`, minusUm, { atLeast: 0, below: thicknessUm, unit: 'um' })
    requireNumber(`${name}.plusUm`, plusUm, { atLeast: 0, atMost: 1e6, unit: 'um' })
    if (minusUm > 0 || plusUm > 0) {
      const ends = { low: thicknessUm - minusUm, nominal: thicknessUm, high: thicknessUm + plusUm }
      knobs.push({ kind: 'thickness', layerIndex, ...ends })
    }
    if (spreads.length > 0) requireEnds(name, layer, spreads)
    for (const { constant, low, high } of spreads) {
      if (low < high)
        knobs.push({ kind: 'constant', layerIndex, constant, low, nominal: readConstant(layer, constant), high })
    }
  }
  if (radius.lowUm < radius.highUm) {
    knobs.push({ kind: 'radius', low: radius.lowUm, nominal: radius.nominalUm, high: radius.highUm })
  }
  return knobs
}

/** A layer's constants keep their ranges, and their order, at both ends. */
function requireEnds(name: string, layer: BendLayer, spreads: readonly ConstantSpread[]): void {
  for (const end of ['low', 'high'] as const) {
    const moved = atEnds(layer, spreads, end)
    effectiveModulusGpa(name, moved)
    requireYields(name, moved)
  }
  for (const { constant, low, high } of spreads) {
    const value = readConstant(layer, constant)
    if (!(low <= value)) requireNumber(`${name}.${constant} spread low`, low, { atMost: value })
    if (!(high >= value)) requireNumber(`${name}.${constant} spread high`, high, { atLeast: value })
  }
}

/** The layer with all its constants at one end: the checks of a layer look at each by itself. */
export function atEnds(layer: BendLayer, spreads: readonly ConstantSpread[], end: 'low' | 'high'): BendLayer {
  return withConstants(
    layer,
    spreads.map((spread) => ({ constant: spread.constant, value: spread[end] })),
  )
}

function leastMagnitudePct({ minPct, maxPct }: FaceRange): number {
  return minPct <= 0 && maxPct >= 0 ? 0 : Math.min(Math.abs(minPct), Math.abs(maxPct))
}

function greatestMagnitudePct({ minPct, maxPct }: FaceRange): number {
  return Math.max(Math.abs(minPct), Math.abs(maxPct))
}
