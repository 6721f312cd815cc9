import { requireNumber } from '../numerics'
import type { Section } from './section'

/**
 * Curl of a stack whose layers expand differently.
 *
 * Model    kappa = sum(E'_i t_i (y_i - y_n) alpha_i dT) / D; for two layers this is the bimetal equation
 * Holds    elastic, flat when dT = 0, layers of one Poisson ratio or narrow strips
 * @param expansionPpmPerDegC  one per layer, in the order of the section
 * @param temperatureChangeDegC  from the temperature at which the stack is flat
 * @returns curvature per mm; positive when the outer layers end up on the convex side
 * @throws  RangeError naming the argument
 * Source   SOURCES.bimetal; check values in test/standards/beam
 */
export function thermalCurvaturePerMm(
  section: Section,
  expansionPpmPerDegC: readonly number[],
  temperatureChangeDegC: number,
): number {
  if (expansionPpmPerDegC.length !== section.layers.length) {
    throw new RangeError(
      `expansionPpmPerDegC must hold one value for each of ${section.layers.length} layers; found ${expansionPpmPerDegC.length}`,
    )
  }
  requireNumber('temperatureChangeDegC', temperatureChangeDegC, { atLeast: -1000, atMost: 1000, unit: 'degC' })
  let momentGpaUm2 = 0
  for (const [index, { innerDepthUm, outerDepthUm, effectiveModulusGpa }] of section.layers.entries()) {
    const ppm = requireNumber(`expansionPpmPerDegC[${index}]`, expansionPpmPerDegC[index] ?? Number.NaN, {})
    const armUm = (innerDepthUm + outerDepthUm) / 2 - section.neutralAxisUm
    momentGpaUm2 += effectiveModulusGpa * (outerDepthUm - innerDepthUm) * armUm * ppm * 1e-6 * temperatureChangeDegC
  }
  // 1 GPa um2 per width is 1e-3 N.
  return (momentGpaUm2 * 1e-3) / section.rigidityNmm2PerMm
}
