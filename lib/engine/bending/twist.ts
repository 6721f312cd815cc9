import { requireNumber } from '../numerics'
import { inSentence } from '../units'
import { type BendLayer, effectiveModulusGpa } from './layers'

const PCT = 100

/**
 * Greatest share of a radian over which the width turns against itself (twist per length times width) for which the figures stand: about
 * twice what was checked by finite elements, our choice.
 */
const MOST_TWIST_OVER_WIDTH_RAD = 0.4
/** Width over thickness from which a strip counts as thin: our choice, where the edges' part of the torque is 6 %. */
const LEAST_WIDTH_TO_THICKNESS = 10

/**
 * Longitudinal strain at the edge over that of the model, at most: fibres are helices whatever the law of the material, and the fibre in the
 * middle of the width keeps its length at the least favourable (ends held apart, or yielded edges), where the edge has theta^2 b^2 / 8.
 */
export const MOST_EDGE_STRAIN_RATIO = 1.5

interface StripTwist {
  /** Along the strip, tension positive: at both edges, and in the middle of the width. */
  edgeStrainPct: number
  centreStrainPct: number
  /** Greatest shear, at both faces. */
  shearPct: number
  /** Depth without shear, from the inside face. */
  shearAxisUm: number
  torqueNmm: number
}

/** Greatest twist over length that the model reaches at a width. */
export const mostTwistRatePerMm = (widthMm: number): number => MOST_TWIST_OVER_WIDTH_RAD / widthMm

/** Whether the model reaches a strip and its twist; if not, why, as a clause. */
export function explainOutsideTwist({
  thicknessUm,
  widthMm,
  twistRatePerMm,
}: {
  readonly thicknessUm: number
  readonly widthMm: number
  readonly twistRatePerMm: number
}): string | null {
  const ratio = (1000 * widthMm) / thicknessUm
  if (ratio < LEAST_WIDTH_TO_THICKNESS) {
    return `the strain of a twisted strip is known from ${LEAST_WIDTH_TO_THICKNESS} times as wide as thick, and this one is ${inSentence(ratio)} times as wide`
  }
  const turn = twistRatePerMm * widthMm
  // The rate at the model's end carries rounding.
  if (turn <= MOST_TWIST_OVER_WIDTH_RAD * (1 + 1e-12)) return null
  const most = (MOST_TWIST_OVER_WIDTH_RAD * 180) / Math.PI
  return `the strain of a twisted strip is known up to a turn of ${inSentence(most, 'deg')} over a length of its own width, and this one turns by ${inSentence((turn * 180) / Math.PI, 'deg')}`
}

/**
 * Shear at a distance from the depth without shear: gamma = 2 theta y.
 *
 * @param armUm  >= 0
 * @returns per cent
 */
export function twistShearPct(twistRatePerMm: number, armUm: number): number {
  return (PCT * 2 * twistRatePerMm * armUm) / 1000
}

/**
 * Strain along the part together with shear, as one strain that yields and tires copper alike: sqrt(eps^2 + gamma^2 / 3).
 *
 * Model    von Mises with plastic flow that keeps its volume; for fatigue it is an assumption
 * @returns per cent; the strain itself where nothing shears
 * Source   SOURCES.plasticBending
 */
export function equivalentStrainPct(alongPct: number, shearPct: number): number {
  return shearPct === 0 ? Math.abs(alongPct) : Math.hypot(alongPct, shearPct / Math.sqrt(3))
}

/**
 * Strain and torque of a thin strip that is twisted about its middle line, its ends free to approach each other.
 *
 * Model    fibres at x from the middle are helices: eps = theta^2 (x^2 - b^2/12) / 2, that is theta^2 b^2 / 12 at the edge and half of it
 *          in compression in the middle. Shear at the faces theta t. Torque 4 D66 b theta (1 - 0.63 t/b) + sum(E t) b^5 theta^3 / 360.
 * Holds    while nothing yields, for widths of LEAST_WIDTH_TO_THICKNESS thicknesses and theta b up to MOST_TWIST_OVER_WIDTH_RAD
 * @param twistRatePerMm  theta, rad per mm, >= 0
 * @param widthMm         b, > 0
 * @throws  RangeError naming layer or number
 * Source   SOURCES.finiteElementBending; thin-strip torsion after Timoshenko, Strength of Materials II (from memory)
 */
export function computeStripTwist(
  layers: readonly BendLayer[],
  { twistRatePerMm, widthMm }: { readonly twistRatePerMm: number; readonly widthMm: number },
): StripTwist {
  requireNumber('twistRatePerMm', twistRatePerMm, { atLeast: 0, atMost: 100 })
  requireNumber('widthMm', widthMm, { above: 0, atMost: 1e4, unit: 'mm' })
  const stiffness = layers.map((layer, at) => {
    effectiveModulusGpa(`layers[${at}]`, layer)
    const coverage = layer.conductor?.coverageFraction ?? 1
    const fillGpa = layer.conductor?.fillModulusGpa ?? 0
    const fillPoisson = layer.conductor?.fillPoisson ?? 0
    return {
      thicknessMm: layer.thicknessUm / 1000,
      modulusMpa: 1000 * (coverage * layer.modulusGpa + (1 - coverage) * fillGpa),
      shearMpa:
        (1000 * coverage * layer.modulusGpa) / (2 * (1 + layer.poisson)) +
        (1000 * (1 - coverage) * fillGpa) / (2 * (1 + fillPoisson)),
    }
  })
  const thicknessMm = stiffness.reduce((sum, each) => sum + each.thicknessMm, 0)
  requireNumber('widthMm over thickness', widthMm / thicknessMm, { atLeast: LEAST_WIDTH_TO_THICKNESS })
  requireNumber('twist over the width', twistRatePerMm * widthMm, { atMost: MOST_TWIST_OVER_WIDTH_RAD * (1 + 1e-12) })
  const shearing = stiffness.reduce((sum, each) => sum + each.shearMpa * each.thicknessMm, 0)
  // About the depth where shear in the plane balances.
  let depthMm = 0
  let firstMoment = 0
  for (const each of stiffness) {
    firstMoment += each.shearMpa * each.thicknessMm * (depthMm + each.thicknessMm / 2)
    depthMm += each.thicknessMm
  }
  const axisMm = firstMoment / shearing
  depthMm = 0
  let d66 = 0
  let stretching = 0
  for (const each of stiffness) {
    const inner = depthMm - axisMm
    depthMm += each.thicknessMm
    d66 += (each.shearMpa * ((depthMm - axisMm) ** 3 - inner ** 3)) / 3
    stretching += each.modulusMpa * each.thicknessMm
  }
  const edge = (twistRatePerMm * widthMm) ** 2 / 12
  return {
    edgeStrainPct: PCT * edge,
    centreStrainPct: (-PCT * edge) / 2,
    shearPct: twistShearPct(twistRatePerMm, 1000 * Math.max(axisMm, thicknessMm - axisMm)),
    shearAxisUm: 1000 * axisMm,
    torqueNmm:
      4 * d66 * widthMm * twistRatePerMm * (1 - (0.63 * thicknessMm) / widthMm) +
      (stretching * widthMm ** 5 * twistRatePerMm ** 3) / 360,
  }
}
