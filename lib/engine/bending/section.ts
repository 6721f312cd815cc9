import type { StripStack } from './bent-state'
import { type BendLayer, effectiveModulusGpa } from './layers'
import { requireYields, stripsOf } from './strips'

/** A layer placed in its stack; depths from the inside (concave) face. */
export interface PlacedLayer {
  id: string
  isConductor: boolean
  innerDepthUm: number
  outerDepthUm: number
  /** Coverage-weighted; in plane strain but for copper with gaps. */
  effectiveModulusGpa: number
  layer: BendLayer
}

/** A bonded stack with what bending needs to know of it. */
export interface BondedSection {
  layers: PlacedLayer[]
  totalThicknessUm: number
  /** Depth of the elastic neutral axis from the inside face. */
  neutralAxisUm: number
  /** Bending moment per curvature and mm of width; N mm2 per mm. */
  rigidityNmm2PerMm: number
  /** Force per strain and mm of width, N/mm. */
  stretchingStiffnessNPerMm: number
  /** The same layers with their yields, for what lies beyond the elastic range. */
  stack: StripStack
}

/** 1 GPa um^3 per um of width is 1e9 N/m2 x 1e-18 m3 / 1e-6 m x 1e-6 m/m = 1e-9 N m2/m = 1e-6 N mm2 per mm. */
const NMM2_PER_MM_IN_GPA_UM3 = 1e-6
/** 1 GPa um = 1000 N/m = 1 N/mm. */
const N_PER_MM_IN_GPA_UM = 1

/**
 * Elastic neutral axis and rigidity of a bonded stack (composite beam, plane strain; copper with gaps contracts sideways).
 *
 * Model    y_n = sum(E'_i t_i y_i) / sum(E'_i t_i), y_i the mid-depth of layer i
 *          D = sum(E'_i (t_i^3 / 12 + t_i (y_i - y_n)^2))
 * Holds    bonded layers, elastic, thickness well below radius. Unbonded leaves: use computeLeaves.
 * Frame    depth from the inside (concave) face. A design lists layers top down: turn them where the inside face is the bottom.
 * @param layers  one or more, innermost first: thicknessUm > 0, modulusGpa > 0, poisson in [0, 0.5)
 *          A pure function of the layers and their constants.
 * @returns the section; neutralAxisUm strictly between 0 and totalThicknessUm
 * @throws  RangeError naming layer and number if those ranges are broken (a schema lets none through: a caller's mistake)
 * Source   SOURCES.compositeBeam, SOURCES.fiveStripBeam, SOURCES.plateBending; check values in test/standards/beam
 * @example a single 50 um film has its axis at 25 um
 */
export function computeSection(layers: readonly BendLayer[]): BondedSection {
  if (layers.length === 0) throw new RangeError('layers must hold at least one layer; found none')
  const placed: PlacedLayer[] = []
  let depthUm = 0
  let stretching = 0
  let firstMoment = 0
  for (const [index, layer] of layers.entries()) {
    const name = `layers[${index}]`
    const modulus = effectiveModulusGpa(name, layer)
    requireYields(name, layer)
    const innerDepthUm = depthUm
    depthUm += layer.thicknessUm
    stretching += modulus * layer.thicknessUm
    firstMoment += modulus * layer.thicknessUm * (innerDepthUm + layer.thicknessUm / 2)
    placed.push({
      id: layer.id,
      isConductor: layer.conductor !== undefined,
      innerDepthUm,
      outerDepthUm: depthUm,
      effectiveModulusGpa: modulus,
      layer,
    })
  }
  const neutralAxisUm = firstMoment / stretching
  let rigidity = 0
  for (const { innerDepthUm, effectiveModulusGpa: modulus, layer } of placed) {
    const t = layer.thicknessUm
    const armUm = innerDepthUm + t / 2 - neutralAxisUm
    rigidity += modulus * t * (t ** 2 / 12 + armUm ** 2)
  }
  return {
    layers: placed,
    totalThicknessUm: depthUm,
    neutralAxisUm,
    rigidityNmm2PerMm: rigidity * NMM2_PER_MM_IN_GPA_UM3,
    stretchingStiffnessNPerMm: stretching * N_PER_MM_IN_GPA_UM,
    stack: {
      thicknessUm: layers.map(({ thicknessUm }) => thicknessUm),
      strips: layers.map((layer) => stripsOf(layer)),
    },
  }
}
