import { requireNumber } from '../numerics'
import { type BendLayer, effectiveModulusGpa } from './layers'

const PCT = 100

/**
 * Greatest share of a radian over which the width turns against itself (twist per length times width) for which the figures stand: about
 * twice what was checked by finite elements, our choice.
 */
const MOST_TWIST_OVER_WIDTH_RAD = 0.4
/** Width over thickness from which a strip counts as thin: our choice, where the edges' part of the torque is 6 %. */
const LEAST_WIDTH_TO_THICKNESS = 10

interface StripTwist {
  /** Along the strip, tension positive: at both edges, and in the middle of the width. */
  edgeStrainPct: number
  centreStrainPct: number
  /** Greatest shear, at both faces. */
  shearPct: number
  torqueNmm: number
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
  requireNumber('twist over the width', twistRatePerMm * widthMm, { atMost: MOST_TWIST_OVER_WIDTH_RAD })
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
    shearPct: PCT * 2 * twistRatePerMm * Math.max(axisMm, thicknessMm - axisMm),
    torqueNmm:
      4 * d66 * widthMm * twistRatePerMm * (1 - (0.63 * thicknessMm) / widthMm) +
      (stretching * widthMm ** 5 * twistRatePerMm ** 3) / 360,
  }
}
