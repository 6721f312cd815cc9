import type { Strip } from './strips'

/** A bonded stack as the solver needs it: thicknesses innermost first, and the strips of each layer. */
export interface StripStack {
  readonly thicknessUm: ArrayLike<number>
  readonly strips: readonly (readonly Strip[])[]
}

/** Bent to an inside radius, or to a curvature of the depth without strain. */
export type Bending = { readonly insideRadiusUm: number } | { readonly curvaturePerUm: number }

/** First loading, or a turn from one end of a cycle to the other: that follows the first loading at twice its scale. */
export type YieldScale = 1 | 2

/**
 * Newton's steps end with one that moves the axis by less than this share of the thickness: each step leaves about the square of the one
 * before it, so that the axis is then right to rounding.
 */
const AXIS_TOLERANCE = 1e-8
/** Halving alone would end in 40. */
const MAX_STEPS = 80

/**
 * Depth without strain of a stack that is bent without axial force.
 *
 * Model    eps = (y - y0) / (R + y0), or kappa (y - y0); stress bilinear in eps (twice the yield strain for yieldScale 2), integrated over
 *          each strip in closed form; sum N = 0 fixes y0. N falls with y0 throughout, so that the root is the only one; it is found by
 *          Newton's method kept within a bracket. Where no strip passes its yield strain the answer is the elastic axis itself.
 * Holds    plane sections, no unloading on the way
 * @param startUm  an axis nearby, to begin the search at
 * @returns um from the inside face
 * Source   SOURCES.plasticBending, for yieldScale 2 SOURCES.reversedYield; finite elements in test/standards/finite-elements
 */
export function findAxisUm(stack: StripStack, bending: Bending, yieldScale: YieldScale = 1, startUm?: number): number {
  const elasticUm = findElasticAxisUm(stack)
  if (isElastic(stack, elasticUm, bending, yieldScale)) return elasticUm
  let low = 0
  let high = 0
  const { thicknessUm, strips } = stack
  for (let at = 0; at < strips.length; at += 1) high += thicknessUm[at] ?? 0
  const tolerance = AXIS_TOLERANCE * high
  let axisUm = startUm !== undefined && startUm > 0 && startUm < high ? startUm : elasticUm
  const isRadius = 'insideRadiusUm' in bending
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const curvature = curvatureAt(bending, axisUm)
    // Axial force times curvature, GPa, and the slope of the force over the axis' depth. Written out here: this is the engine's innermost loop.
    let pull = 0
    let slope = 0
    let depthUm = 0
    let outer = curvature * -axisUm
    for (let at = 0; at < strips.length; at += 1) {
      const inner = outer
      depthUm += thicknessUm[at] ?? 0
      outer = curvature * (depthUm - axisUm)
      const ofLayer = strips[at]
      if (ofLayer === undefined) continue
      for (let stripAt = 0; stripAt < ofLayer.length; stripAt += 1) {
        const strip = ofLayer[stripAt]
        if (strip === undefined) continue
        const { widthFraction } = strip
        const share = stressIntegral(strip, outer, yieldScale) - stressIntegral(strip, inner, yieldScale)
        const innerStress = stressGpa(strip, inner, yieldScale)
        const outerStress = stressGpa(strip, outer, yieldScale)
        pull += widthFraction * share
        // d eps / d y0 is -kappa at a curvature, and -kappa (1 + eps) at a radius, where kappa moves too.
        slope += isRadius
          ? widthFraction * (share - outerStress * (1 + outer) + innerStress * (1 + inner))
          : widthFraction * (innerStress - outerStress)
      }
    }
    const force = pull / curvature
    if (force === 0) return axisUm
    if (force > 0) low = axisUm
    else high = axisUm
    const newton = axisUm - force / slope
    if (newton > low && newton < high) {
      if (Math.abs(newton - axisUm) <= tolerance) return newton
      axisUm = newton
    } else {
      axisUm = low + (high - low) / 2
      // A bracket that has closed, around a force that rounding keeps from 0.
      if (axisUm <= low || axisUm >= high) return axisUm
    }
  }
  return axisUm
}

/** Axis of the stack while nothing yields: sum(E t y) / sum(E t). */
export function findElasticAxisUm({ thicknessUm, strips }: StripStack): number {
  let depthUm = 0
  let stretching = 0
  let firstMoment = 0
  for (let at = 0; at < strips.length; at += 1) {
    const t = thicknessUm[at] ?? 0
    let modulus = 0
    for (const strip of strips[at] ?? []) modulus += strip.widthFraction * strip.modulusGpa
    stretching += modulus * t
    firstMoment += modulus * t * (depthUm + t / 2)
    depthUm += t
  }
  return firstMoment / stretching
}

export function curvatureAt(bending: Bending, axisUm: number): number {
  return 'curvaturePerUm' in bending ? bending.curvaturePerUm : 1 / (bending.insideRadiusUm + axisUm)
}

function isElastic({ thicknessUm, strips }: StripStack, axisUm: number, bending: Bending, yieldScale: number): boolean {
  const curvature = curvatureAt(bending, axisUm)
  let depthUm = 0
  for (let at = 0; at < strips.length; at += 1) {
    const innerUm = depthUm
    depthUm += thicknessUm[at] ?? 0
    const strain = curvature * Math.max(Math.abs(innerUm - axisUm), Math.abs(depthUm - axisUm))
    for (const strip of strips[at] ?? []) if (strain > yieldScale * strip.yieldStrain) return false
  }
  return true
}

/** Moment about the axis, N per mm of width times mm. */
export function momentNPerMmWidth({ thicknessUm, strips }: StripStack, axisUm: number, curvaturePerUm: number): number {
  let moment = 0
  let depthUm = 0
  for (let at = 0; at < strips.length; at += 1) {
    const inner = curvaturePerUm * (depthUm - axisUm)
    depthUm += thicknessUm[at] ?? 0
    const outer = curvaturePerUm * (depthUm - axisUm)
    for (const strip of strips[at] ?? []) {
      moment += strip.widthFraction * (stressMoment(strip, outer) - stressMoment(strip, inner))
    }
  }
  // 1 GPa um2 per um of width is 1e-3 N.
  return (moment / curvaturePerUm ** 2) * 1e-3
}

export function stressGpa({ modulusGpa, yieldStrain, tangentGpa }: Strip, strain: number, yieldScale = 1): number {
  const knee = yieldScale * yieldStrain
  const e = Math.abs(strain)
  if (e <= knee) return modulusGpa * strain
  const stress = modulusGpa * knee + tangentGpa * (e - knee)
  return strain < 0 ? -stress : stress
}

/** Integral of stress over strain from 0; even in strain. */
export function stressIntegral({ modulusGpa, yieldStrain, tangentGpa }: Strip, strain: number, yieldScale = 1): number {
  const knee = yieldScale * yieldStrain
  const e = Math.abs(strain)
  if (e <= knee) return (modulusGpa * e * e) / 2
  const past = e - knee
  return modulusGpa * knee * (knee / 2 + past) + (tangentGpa * past * past) / 2
}

/** Work of bending up to a curvature, N mm per mm of width and mm of length: the integral of moment over curvature. */
export function bendingWorkNPerMm({ thicknessUm, strips }: StripStack, axisUm: number, curvaturePerUm: number): number {
  let work = 0
  let depthUm = 0
  for (let at = 0; at < strips.length; at += 1) {
    const inner = curvaturePerUm * (depthUm - axisUm)
    depthUm += thicknessUm[at] ?? 0
    const outer = curvaturePerUm * (depthUm - axisUm)
    for (const strip of strips[at] ?? [])
      work += strip.widthFraction * (workIntegral(strip, outer) - workIntegral(strip, inner))
  }
  // 1 GPa um is 1 N per mm.
  return work / curvaturePerUm
}

/** Integral of stressIntegral over strain from 0; odd in strain. */
function workIntegral({ modulusGpa, yieldStrain, tangentGpa }: Strip, strain: number): number {
  const e = Math.abs(strain)
  if (e <= yieldStrain) return (modulusGpa * strain ** 3) / 6
  const past = e - yieldStrain
  const kneeStress = modulusGpa * yieldStrain
  const work = (kneeStress * (yieldStrain ** 2 + 3 * yieldStrain * past + 3 * past ** 2) + tangentGpa * past ** 3) / 6
  return strain < 0 ? -work : work
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
