import { requireNumber } from '../numerics'

/** One bonded layer as thermal curl sees it. */
export interface ExpandingLayer {
  readonly thicknessUm: number
  /** Coverage-weighted, as computeSection weighs it. */
  readonly modulusGpa: number
  readonly expansionPpmPerC: number
}

/**
 * Curl of a bonded stack whose layers expand differently.
 *
 * Model    kappa = sum(E'_i t_i (y_i - y_n) alpha_i dT) / D; for two layers this is the bimetal equation
 * Holds    elastic, flat when dT = 0, layers of one Poisson ratio or narrow strips
 * @param layers  one or more, in the order of the section: thicknessUm > 0, modulusGpa > 0
 * @param temperatureChangeDegC  from the temperature at which the stack is flat
 * @returns curvature per mm; positive when the layers at the end of the list come to the convex side
 * @throws  RangeError naming the argument
 * Source   SOURCES.bimetal; check values in test/standards/beam
 */
export function thermalCurvaturePerMm(layers: readonly ExpandingLayer[], temperatureChangeDegC: number): number {
  if (layers.length === 0) throw new RangeError('layers must hold at least one layer; found none')
  requireNumber('temperatureChangeDegC', temperatureChangeDegC, { atLeast: -1000, atMost: 1000, unit: 'degC' })
  let depthUm = 0
  let stretching = 0
  let firstMoment = 0
  let secondMoment = 0
  let thermalForce = 0
  let thermalMoment = 0
  for (const [index, layer] of layers.entries()) {
    const { thicknessUm, modulusGpa, expansionPpmPerC } = layer
    if (!isUsable(layer)) refuse(`layers[${index}]`, layer)
    const middleUm = depthUm + thicknessUm / 2
    const stiffness = modulusGpa * thicknessUm
    depthUm += thicknessUm
    stretching += stiffness
    firstMoment += stiffness * middleUm
    secondMoment += stiffness * (middleUm ** 2 + thicknessUm ** 2 / 12)
    thermalForce += stiffness * expansionPpmPerC
    thermalMoment += stiffness * expansionPpmPerC * middleUm
  }
  const axisUm = firstMoment / stretching
  const rigidity = secondMoment - stretching * axisUm ** 2
  // GPa um2 over GPa um3 is per um; ppm is 1e-6, and a mm is 1e3 um.
  return ((thermalMoment - axisUm * thermalForce) / rigidity) * 1e-3 * temperatureChangeDegC
}

function isUsable({ thicknessUm, modulusGpa, expansionPpmPerC }: ExpandingLayer): boolean {
  return (
    thicknessUm > 0 &&
    Number.isFinite(thicknessUm) &&
    modulusGpa > 0 &&
    Number.isFinite(modulusGpa) &&
    Number.isFinite(expansionPpmPerC)
  )
}

/** @throws RangeError naming the first number that breaks its range */
function refuse(name: string, { thicknessUm, modulusGpa, expansionPpmPerC }: ExpandingLayer): void {
  requireNumber(`${name}.thicknessUm`, thicknessUm, { above: 0, unit: 'um' })
  requireNumber(`${name}.modulusGpa`, modulusGpa, { above: 0, unit: 'GPa' })
  requireNumber(`${name}.expansionPpmPerC`, expansionPpmPerC, {})
}

/**
 * How far a strip that curls evenly stands off a plane that it lies on, over its length: the rise of the arc.
 *
 * Model    (1 - cos(L kappa / 2)) / (kappa L); L kappa / 8 while that is small. A strip that curls past a half circle counts as one
 * @param curvaturePerMm  any sign
 * @param lengthMm  > 0, along the curl
 * @returns per cent of the length, at least 0 and at most 100 / pi
 * @throws  RangeError naming the argument
 * Source   SOURCES.exactArithmetic (geometry of the circle)
 */
export function curlRisePct(curvaturePerMm: number, lengthMm: number): number {
  requireNumber('curvaturePerMm', curvaturePerMm, {})
  requireNumber('lengthMm', lengthMm, { above: 0, atMost: 1e6, unit: 'mm' })
  const turn = Math.min(Math.PI, Math.abs(curvaturePerMm) * lengthMm)
  // 2 sin^2(x / 2) keeps the digits that 1 - cos(x) loses where x is small.
  return turn === 0 ? 0 : (100 * 2 * Math.sin(turn / 4) ** 2) / turn
}
