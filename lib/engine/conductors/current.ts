import { requireNumber } from '../numerics'
import { inSentence } from '../units'
import { sectionAreaMm2 } from './resistance'

/** Covered on both sides by dielectric, or facing air. The relation treats them as factors of two apart. */
export type CurrentLocation = 'internal' | 'external'

/** k of the relation, with area in square mil. Source SOURCES.ipc2221. */
const CURRENT_FACTOR: Record<CurrentLocation, number> = { external: 0.048, internal: 0.024 }
const RISE_EXPONENT = 0.44
const AREA_EXPONENT = 0.725
/** Range that is commonly given for the fit; common practice. */
const MAX_CURRENT_AMP: Record<CurrentLocation, number> = { external: 35, internal: 17.5 }
const FITTED_RISE_DEGC = { min: 10, max: 100 }
const SQUARE_MIL_PER_MM2 = 1 / 0.0254 ** 2

interface ConductorSection {
  widthMm: number
  thicknessUm: number
}

/**
 * Current that warms a conductor by a given rise.
 *
 * Model    I = k dT^0.44 A^0.725, A in square mil, k = 0.048 external, 0.024 internal
 * Holds    a screening rule: fitted to charts of the 1950s for single conductors on rigid boards in still air. Thin
 *          polyimide without planes spreads heat less; internal conductors are in truth not twice as hot.
 * @param temperatureRiseDegC  > 0
 * @returns A
 * @throws  RangeError naming the argument
 * Source   SOURCES.ipc2221; check values in test/standards/conductors
 */
export function currentCapacityAmp(
  section: ConductorSection,
  { temperatureRiseDegC, location }: { temperatureRiseDegC: number; location: CurrentLocation },
): number {
  const areaSqMil = sectionAreaMm2(section) * SQUARE_MIL_PER_MM2
  return CURRENT_FACTOR[location] * requireRise(temperatureRiseDegC) ** RISE_EXPONENT * areaSqMil ** AREA_EXPONENT
}

/** Copper section in mm2 that carries a current at a given rise: inverse of currentCapacityAmp; same source and errors. */
export function requiredAreaMm2({
  currentAmp,
  temperatureRiseDegC,
  location,
}: {
  currentAmp: number
  temperatureRiseDegC: number
  location: CurrentLocation
}): number {
  const base =
    requireCurrent(currentAmp) / (CURRENT_FACTOR[location] * requireRise(temperatureRiseDegC) ** RISE_EXPONENT)
  return base ** (1 / AREA_EXPONENT) / SQUARE_MIL_PER_MM2
}

/** Rise in degC that a current causes: inverse of currentCapacityAmp; same source and errors. */
export function temperatureRiseDegC(section: ConductorSection, currentAmp: number, location: CurrentLocation): number {
  const areaSqMil = sectionAreaMm2(section) * SQUARE_MIL_PER_MM2
  const base = requireCurrent(currentAmp) / (CURRENT_FACTOR[location] * areaSqMil ** AREA_EXPONENT)
  return base ** (1 / RISE_EXPONENT)
}

/** Sentences on what lies outside the range that the relation was fitted to; empty where all is inside. */
export function listCurrentCautions({
  currentAmp,
  temperatureRiseDegC: riseDegC,
  location,
}: {
  currentAmp: number
  temperatureRiseDegC: number
  location: CurrentLocation
}): string[] {
  const cautions: string[] = []
  if (currentAmp > MAX_CURRENT_AMP[location]) {
    cautions.push(
      `${currentAmp} A is above the ${MAX_CURRENT_AMP[location]} A to which the relation is commonly used for ${location} conductors.`,
    )
  }
  if (riseDegC < FITTED_RISE_DEGC.min || riseDegC > FITTED_RISE_DEGC.max) {
    cautions.push(
      `A rise of ${inSentence(riseDegC, 'degC')} lies outside the ${FITTED_RISE_DEGC.min} to ${inSentence(FITTED_RISE_DEGC.max, 'degC')} that the relation was fitted to.`,
    )
  }
  return cautions
}

function requireRise(riseDegC: number): number {
  return requireNumber('temperatureRiseDegC', riseDegC, { above: 0, atMost: 500, unit: 'degC' })
}

function requireCurrent(currentAmp: number): number {
  return requireNumber('currentAmp', currentAmp, { above: 0, atMost: 1e5, unit: 'A' })
}
