import { requireNumber } from '../numerics'
import { STANDARD_FOILS } from '../thickness'
import { type CurrentLocation, requiredAreaMm2 } from './current'
import { COPPER_TEMPERATURE_COEFFICIENT_PER_DEGC, IACS_RESISTIVITY_OHM_MM2_PER_M, sectionAreaMm2 } from './resistance'

/** What a conductor must do; each need is optional, and those stated all count. */
export interface ConductorNeeds {
  widthMm: number
  current?: { amp: number; temperatureRiseDegC: number; location: CurrentLocation }
  /** Largest resistance of a run of this length at this temperature. */
  resistance?: { ohm: number; lengthMm: number; temperatureDegC: number; resistivityOhmMm2PerM?: number }
  /** Least finished thickness asked for outright, e.g. by a connector or an impedance. */
  thicknessUm?: number
}

export type GoverningNeed = 'current' | 'resistance' | 'thickness'

export interface LightestFoil {
  /** Lightest standard foil that serves; null where none does. */
  foil: { weightOzPerFt2: number; nominalFoilUm: number; finishedThicknessUm: number } | null
  /** Finished copper that the needs ask for, and which of them asks most. */
  neededThicknessUm: number
  governedBy: GoverningNeed
}

/**
 * Lightest standard foil whose finished copper meets every stated need at the conductor's width.
 *
 * Model    needed thickness = largest of A / w (current), rho L (1 + alpha (T - 20)) / (w R) (resistance) and the
 *          thickness asked for; finished = nominal foil + plating - processing loss
 * @param platingThicknessUm, processingLossUm  of the layer, >= 0
 * @returns null when no need is stated: then nothing can be called heavier than needed
 * @throws  RangeError naming the argument
 * Source   SOURCES.ipc2221, SOURCES.iacs, foils SOURCES.ipc4562
 */
export function findLightestFoil(
  needs: ConductorNeeds,
  { platingThicknessUm, processingLossUm }: { platingThicknessUm: number; processingLossUm: number },
): LightestFoil | null {
  requireNumber('platingThicknessUm', platingThicknessUm, { atLeast: 0, atMost: 5000, unit: 'um' })
  requireNumber('processingLossUm', processingLossUm, { atLeast: 0, atMost: 5000, unit: 'um' })
  const asked = listNeededThicknesses(needs)
  const governing = asked.reduce<(typeof asked)[number] | null>(
    (most, each) => (most === null || each.thicknessUm > most.thicknessUm ? each : most),
    null,
  )
  if (governing === null) return null
  const foil = STANDARD_FOILS.map((each) => ({
    ...each,
    finishedThicknessUm: each.nominalFoilUm + platingThicknessUm - processingLossUm,
  })).find((each) => each.finishedThicknessUm > 0 && each.finishedThicknessUm >= governing.thicknessUm)
  return { foil: foil ?? null, neededThicknessUm: governing.thicknessUm, governedBy: governing.need }
}

function listNeededThicknesses(needs: ConductorNeeds): { need: GoverningNeed; thicknessUm: number }[] {
  // A nominal thickness stands in only to let the shared check name a bad width.
  sectionAreaMm2({ widthMm: needs.widthMm, thicknessUm: 1 })
  const asked: { need: GoverningNeed; thicknessUm: number }[] = []
  if (needs.current !== undefined) {
    const { amp, temperatureRiseDegC, location } = needs.current
    const areaMm2 = requiredAreaMm2({ currentAmp: amp, temperatureRiseDegC, location })
    asked.push({ need: 'current', thicknessUm: (1000 * areaMm2) / needs.widthMm })
  }
  if (needs.resistance !== undefined) {
    const { ohm, lengthMm, temperatureDegC, resistivityOhmMm2PerM = IACS_RESISTIVITY_OHM_MM2_PER_M } = needs.resistance
    requireNumber('resistance.ohm', ohm, { above: 0, unit: 'ohm' })
    requireNumber('resistance.lengthMm', lengthMm, { above: 0, atMost: 1e6, unit: 'mm' })
    requireNumber('resistance.temperatureDegC', temperatureDegC, { atLeast: -200, atMost: 400, unit: 'degC' })
    requireNumber('resistance.resistivityOhmMm2PerM', resistivityOhmMm2PerM, { above: 0, atMost: 10 })
    const factor = 1 + COPPER_TEMPERATURE_COEFFICIENT_PER_DEGC * (temperatureDegC - 20)
    // ohm mm2/m over ohm, times mm over mm, is mm2/m = um.
    asked.push({
      need: 'resistance',
      thicknessUm: (resistivityOhmMm2PerM * factor * lengthMm) / (needs.widthMm * ohm),
    })
  }
  if (needs.thicknessUm !== undefined) {
    requireNumber('thicknessUm', needs.thicknessUm, { above: 0, atMost: 5000, unit: 'um' })
    asked.push({ need: 'thickness', thicknessUm: needs.thicknessUm })
  }
  return asked
}
