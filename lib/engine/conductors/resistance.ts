import { requireNumber } from '../numerics'

/** Resistivity of the annealed copper standard at 20 degC: 1/58 ohm mm2/m exactly. Source SOURCES.iacs. */
export const IACS_RESISTIVITY_OHM_MM2_PER_M = 1 / 58
/** Change of resistance per degC, referred to 20 degC. Source SOURCES.iacs. */
export const COPPER_TEMPERATURE_COEFFICIENT_PER_DEGC = 0.00393
const REFERENCE_DEGC = 20
/** Vacuum permeability times pi, for skin depth: 4 pi^2 1e-7. */
const PI_MU0 = 4 * Math.PI ** 2 * 1e-7

/** A run of one width and finished thickness. */
export interface ConductorRun {
  lengthMm: number
  /** Mean of top and foot width, where etching leaves a slope. */
  widthMm: number
  thicknessUm: number
}

/**
 * Resistance of a conductor at a temperature; runs of different width in series add.
 *
 * Model    R = sum(rho L / (w t)) [1 + 0.00393 (T - 20)]
 * Holds    direct current, rectangular section, finished copper; foil may conduct less than the standard
 *          (92 % was measured on a 12 um annealed foil): enter its own resistivity
 * @param runs  one or more: lengths, widths and thicknesses > 0
 * @param temperatureDegC  -200 to 400
 * @param resistivityOhmMm2PerM  at 20 degC, > 0; the annealed copper standard where absent
 * @returns ohm
 * @throws  RangeError naming the run
 * Source   SOURCES.iacs; check values in test/standards/conductors
 */
export function resistanceOhm({
  runs,
  temperatureDegC,
  resistivityOhmMm2PerM = IACS_RESISTIVITY_OHM_MM2_PER_M,
}: {
  runs: readonly ConductorRun[]
  temperatureDegC: number
  resistivityOhmMm2PerM?: number
}): number {
  if (runs.length === 0) throw new RangeError('runs must hold at least one run; found none')
  requireNumber('temperatureDegC', temperatureDegC, { atLeast: -200, atMost: 400, unit: 'degC' })
  requireNumber('resistivityOhmMm2PerM', resistivityOhmMm2PerM, { above: 0, atMost: 10, unit: 'ohm mm2/m' })
  let lengthOverAreaPerMm = 0
  for (const [index, { lengthMm, widthMm, thicknessUm }] of runs.entries()) {
    requireNumber(`runs[${index}].lengthMm`, lengthMm, { above: 0, atMost: 1e6, unit: 'mm' })
    const areaMm2 = sectionAreaMm2({ widthMm, thicknessUm })
    lengthOverAreaPerMm += lengthMm / areaMm2
  }
  const factor = 1 + COPPER_TEMPERATURE_COEFFICIENT_PER_DEGC * (temperatureDegC - REFERENCE_DEGC)
  // ohm mm2/m is 1e-3 ohm mm.
  return resistivityOhmMm2PerM * 1e-3 * lengthOverAreaPerMm * factor
}

/** Copper section in mm2. Throws RangeError unless width and thickness are above 0 (and at most 1 m and 5 mm). */
export function sectionAreaMm2({ widthMm, thicknessUm }: { widthMm: number; thicknessUm: number }): number {
  requireNumber('widthMm', widthMm, { above: 0, atMost: 1000, unit: 'mm' })
  requireNumber('thicknessUm', thicknessUm, { above: 0, atMost: 5000, unit: 'um' })
  return widthMm * thicknessUm * 1e-3
}

/**
 * Voltage drop over a conductor and, where it returns the same way, its return.
 *
 * @param resistanceOhm >= 0, currentAmp >= 0
 * @returns V
 * @throws  RangeError naming the argument
 * Source   SOURCES.exactArithmetic (Ohm's law)
 */
export function voltageDropVolt(
  { resistanceOhm: ohm, currentAmp }: { resistanceOhm: number; currentAmp: number },
  { returnsSameWay = false }: { returnsSameWay?: boolean } = {},
): number {
  requireNumber('resistanceOhm', ohm, { atLeast: 0, unit: 'ohm' })
  requireNumber('currentAmp', currentAmp, { atLeast: 0, atMost: 1e5, unit: 'A' })
  return ohm * currentAmp * (returnsSameWay ? 2 : 1)
}

/**
 * Depth at which alternating current has fallen to 1/e.
 *
 * Model    delta = sqrt(rho / (pi f mu0))
 * @param frequencyHz  > 0
 * @returns um
 * @throws  RangeError naming the argument
 * Source   SOURCES.skinEffect, SOURCES.iacs; check values in test/standards/conductors
 */
export function skinDepthUm(
  frequencyHz: number,
  resistivityOhmMm2PerM: number = IACS_RESISTIVITY_OHM_MM2_PER_M,
): number {
  requireNumber('frequencyHz', frequencyHz, { above: 0, unit: 'Hz' })
  requireNumber('resistivityOhmMm2PerM', resistivityOhmMm2PerM, { above: 0, atMost: 10, unit: 'ohm mm2/m' })
  return 1e6 * Math.sqrt((resistivityOhmMm2PerM * 1e-6) / (PI_MU0 * frequencyHz))
}
