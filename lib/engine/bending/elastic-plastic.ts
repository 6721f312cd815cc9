import { findRoot, requireNumber } from '../numerics'
import type { Section } from './section'

/** A share of one layer's width with one material in it. */
export interface Strip {
  id: string
  innerDepthUm: number
  outerDepthUm: number
  widthFraction: number
  /** Plane strain throughout. Yield strain is infinite for a strip that stays elastic. */
  modulusGpa: number
  yieldStrain: number
  tangentGpa: number
}

/** Ratio of plastic slope in plane strain to uniaxial: 1 / (1 - 1/4), plastic flow being incompressible. */
const PLASTIC_PLANE_STRAIN = 4 / 3

/**
 * Strain at which a wide strip yields.
 *
 * Model    von Mises in plane strain: sigma_y' = sigma_y / sqrt(1 - nu + nu^2), eps_y = sigma_y' / E'
 * @param yieldStrengthMpa  uniaxial, > 0
 * @param modulusGpa > 0, poisson in [0, 0.5)
 * @returns per cent
 * @throws  RangeError naming the argument
 * Source   SOURCES.plasticBending
 */
export function yieldStrainPct({
  yieldStrengthMpa,
  modulusGpa,
  poisson,
}: {
  yieldStrengthMpa: number
  modulusGpa: number
  poisson: number
}): number {
  requireNumber('yieldStrengthMpa', yieldStrengthMpa, { above: 0, atMost: 1e5, unit: 'MPa' })
  requireNumber('modulusGpa', modulusGpa, { above: 0, atMost: 2500, unit: 'GPa' })
  requireNumber('poisson', poisson, { atLeast: 0, below: 0.5 })
  const yieldGpa = (yieldStrengthMpa * 1e-3) / Math.sqrt(1 - poisson + poisson ** 2)
  return (100 * yieldGpa * (1 - poisson ** 2)) / modulusGpa
}

/** Splits a section into strips of one material: the copper and the fill of a patterned layer lie side by side. */
export function listStrips(section: Section): Strip[] {
  const strips: Strip[] = []
  for (const [index, { id, innerDepthUm, outerDepthUm, layer }] of section.layers.entries()) {
    const modulusGpa = layer.modulusGpa / (1 - layer.poisson ** 2)
    const tangentGpa =
      layer.tangentModulusGpa === undefined
        ? 0
        : PLASTIC_PLANE_STRAIN *
          requireNumber(`layers[${index}].tangentModulusGpa`, layer.tangentModulusGpa, {
            atLeast: 0,
            below: modulusGpa / PLASTIC_PLANE_STRAIN,
            unit: 'GPa',
          })
    const yieldStrain =
      layer.yieldStrengthMpa === undefined
        ? Number.POSITIVE_INFINITY
        : yieldStrainPct({
            yieldStrengthMpa: layer.yieldStrengthMpa,
            modulusGpa: layer.modulusGpa,
            poisson: layer.poisson,
          }) / 100
    const coverage = layer.conductor?.coverageFraction ?? 1
    if (coverage > 0) {
      strips.push({ id, innerDepthUm, outerDepthUm, widthFraction: coverage, modulusGpa, yieldStrain, tangentGpa })
    }
    if (layer.conductor !== undefined && coverage < 1 && layer.conductor.fillModulusGpa > 0) {
      const fillGpa = layer.conductor.fillModulusGpa / (1 - layer.conductor.fillPoisson ** 2)
      strips.push({
        id,
        innerDepthUm,
        outerDepthUm,
        widthFraction: 1 - coverage,
        modulusGpa: fillGpa,
        yieldStrain: Number.POSITIVE_INFINITY,
        tangentGpa: 0,
      })
    }
  }
  return strips
}

export interface BentState {
  /** Depth at which the strain is 0; wanders from the elastic axis as copper yields. */
  axisUm: number
  curvaturePerMm: number
  /** N mm per mm of width. */
  momentNPerMmWidth: number
}

/** Axis to a billionth of the thickness: its error enters the moment in the same proportion. */
const AXIS_TOLERANCE = 1e-9

/**
 * Bent state without axial force: the axis settles where tension and compression balance.
 *
 * Model    eps = kappa (y - y_0); stress bilinear in eps, integrated over each strip in closed form; sum N = 0 fixes y_0
 * Holds    bending in one go from flat, no unloading on the way
 * @param curvatureAt  curvature per um that belongs to an axis depth: constant, or 1 / (R_i + y_0) for a given radius
 * Source   SOURCES.plasticBending
 */
export function solveBentState(
  strips: readonly Strip[],
  thicknessUm: number,
  curvatureAt: (axisUm: number) => number,
): BentState {
  const { root: axisUm } = findRoot((y0) => axialForceGpaUm(strips, y0, curvatureAt(y0)), {
    low: 0,
    high: thicknessUm,
    tolerance: AXIS_TOLERANCE * thicknessUm,
  })
  const curvaturePerUm = curvatureAt(axisUm)
  return {
    axisUm,
    curvaturePerMm: curvaturePerUm * 1000,
    // 1 GPa um2 per um of width is 1e-3 N.
    momentNPerMmWidth: momentGpaUm2(strips, axisUm, curvaturePerUm) * 1e-3,
  }
}

function axialForceGpaUm(strips: readonly Strip[], axisUm: number, curvaturePerUm: number): number {
  let force = 0
  for (const strip of strips) {
    const inner = curvaturePerUm * (strip.innerDepthUm - axisUm)
    const outer = curvaturePerUm * (strip.outerDepthUm - axisUm)
    force += strip.widthFraction * (stressIntegral(strip, outer) - stressIntegral(strip, inner))
  }
  return force / curvaturePerUm
}

function momentGpaUm2(strips: readonly Strip[], axisUm: number, curvaturePerUm: number): number {
  let moment = 0
  for (const strip of strips) {
    const inner = curvaturePerUm * (strip.innerDepthUm - axisUm)
    const outer = curvaturePerUm * (strip.outerDepthUm - axisUm)
    moment += strip.widthFraction * (stressMoment(strip, outer) - stressMoment(strip, inner))
  }
  return moment / curvaturePerUm ** 2
}

/** Integral of stress over strain from 0; even in strain. */
function stressIntegral({ modulusGpa, yieldStrain, tangentGpa }: Strip, strain: number): number {
  const e = Math.abs(strain)
  if (e <= yieldStrain) return (modulusGpa * e ** 2) / 2
  const past = e - yieldStrain
  return modulusGpa * yieldStrain * (yieldStrain / 2 + past) + (tangentGpa * past ** 2) / 2
}

/** Integral of stress times strain from 0; odd in strain. */
function stressMoment({ modulusGpa, yieldStrain, tangentGpa }: Strip, strain: number): number {
  const e = Math.abs(strain)
  if (e <= yieldStrain) return (modulusGpa * strain ** 3) / 3
  const squares = (e ** 2 - yieldStrain ** 2) / 2
  const cubes = (e ** 3 - yieldStrain ** 3) / 3
  const beyond = modulusGpa * yieldStrain * squares + tangentGpa * (cubes - yieldStrain * squares)
  return Math.sign(strain) * ((modulusGpa * yieldStrain ** 3) / 3 + beyond)
}
