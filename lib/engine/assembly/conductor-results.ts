import {
  type ConductorNeeds,
  type CurrentLocation,
  currentCapacityAmp,
  findLightestFoil,
  listCurrentCautions,
  resistanceOhm,
  temperatureRiseDegC,
  voltageDropVolt,
} from '../conductors'
import type { ConductorFeature, Design, Material } from '../design'
import type { ConductorResult, MissingInput } from '../results'
import type { SectionLayer, ZoneSection } from './zone-section'

/** What a conductor layer is like where it is thinnest: that is where current and resistance are decided. */
export interface ThinnestCopper {
  readonly layer: SectionLayer
  readonly location: CurrentLocation
}

/** For each conductor layer with copper, its thinnest finished copper over all zones, and whether it is covered there. */
export function findThinnestCopper(sections: readonly ZoneSection[]): Map<string, ThinnestCopper> {
  const thinnest = new Map<string, ThinnestCopper>()
  for (const { layers } of sections) {
    layers.forEach((layer, at) => {
      if (layer.copper === null || layer.copper.coverageFraction === 0) return
      const known = thinnest.get(layer.layer.id)
      if (known !== undefined && known.layer.nominalUm <= layer.nominalUm) return
      thinnest.set(layer.layer.id, {
        layer,
        location: isCovered(layers[at - 1]) && isCovered(layers[at + 1]) ? 'internal' : 'external',
      })
    })
  }
  return thinnest
}

function isCovered(neighbour: SectionLayer | undefined): boolean {
  return neighbour !== undefined && neighbour.layer.kind !== 'unbonded-gap'
}

/** Above this the linear law of resistance is not meant to be used. */
const MAX_RESISTANCE_DEGC = 400

/**
 * Resistance, drop, rise and capacity of a listed conductor, and the lightest foil that would carry what it must.
 * Temperature is the hottest operation plus the conductor's own rise.
 */
export function computeConductorResult(
  feature: ConductorFeature,
  position: number,
  design: Design,
  thinnest: ThinnestCopper | undefined,
): ConductorResult {
  const missing: MissingInput[] = []
  const lacks = (field: keyof ConductorFeature, label: string) =>
    missing.push({ path: ['features', 'conductors', position, field], label: `${label} of ${feature.name}` })
  if (thinnest === undefined) {
    lacks('layerId', 'copper in any zone')
    return makeUnknown(feature, missing)
  }
  const { layer, location } = thinnest
  const section = { widthMm: feature.widthMm, thicknessUm: layer.nominalUm }
  const { currentAmp, lengthMm, allowedRiseDegC } = feature
  const { operatingMaxDegC } = design.brief
  if (currentAmp === null) lacks('currentAmp', 'current')
  if (lengthMm === null) lacks('lengthMm', 'length')
  if (operatingMaxDegC === null) {
    missing.push({ path: ['brief', 'operatingMaxDegC'], label: 'highest operating temperature' })
  }
  const riseDegC =
    currentAmp === null ? null : currentAmp === 0 ? 0 : temperatureRiseDegC(section, currentAmp, location)
  const temperatureDegC = operatingMaxDegC === null ? null : operatingMaxDegC + (riseDegC ?? 0)
  const cautions = listConductorCautions(feature, riseDegC, temperatureDegC, location)
  const isInRange = temperatureDegC !== null && temperatureDegC >= -200 && temperatureDegC <= MAX_RESISTANCE_DEGC
  const resistivity = layer.material?.foil?.resistivityOhmMm2PerM.value
  const ohm =
    lengthMm === null || !isInRange
      ? null
      : resistanceOhm({
          runs: [{ ...section, lengthMm }],
          temperatureDegC,
          ...(resistivity === undefined ? {} : { resistivityOhmMm2PerM: resistivity }),
        })
  return {
    conductorId: feature.id,
    name: feature.name,
    layerId: feature.layerId,
    finishedThicknessUm: layer.nominalUm,
    temperatureDegC,
    resistanceOhm: ohm,
    dropVolt: ohm === null || currentAmp === null ? null : voltageDropVolt({ resistanceOhm: ohm, currentAmp }),
    capacityAmp:
      allowedRiseDegC === null ? null : currentCapacityAmp(section, { temperatureRiseDegC: allowedRiseDegC, location }),
    riseDegC,
    lightestFoilUm: findLightestFoilUm(feature, layer, location, isInRange ? temperatureDegC : null),
    missing,
    cautions,
  }
}

function findLightestFoilUm(
  { widthMm, lengthMm, currentAmp, allowedRiseDegC, allowedDropVolt }: ConductorFeature,
  { copper, material }: SectionLayer,
  location: CurrentLocation,
  temperatureDegC: number | null,
): number | null {
  if (copper === null || currentAmp === null || currentAmp === 0) return null
  const needs: ConductorNeeds = {
    widthMm,
    ...(allowedRiseDegC === null
      ? {}
      : { current: { amp: currentAmp, temperatureRiseDegC: allowedRiseDegC, location } }),
    ...(allowedDropVolt === null || lengthMm === null || temperatureDegC === null
      ? {}
      : {
          resistance: {
            ohm: allowedDropVolt / currentAmp,
            lengthMm,
            temperatureDegC,
            ...readResistivity(material),
          },
        }),
  }
  const lightest = findLightestFoil(needs, { platingThicknessUm: copper.platingUm, processingLossUm: copper.lossUm })
  return lightest?.foil?.nominalFoilUm ?? null
}

function readResistivity(material: Material | null): { resistivityOhmMm2PerM: number } | Record<string, never> {
  return material?.foil == null ? {} : { resistivityOhmMm2PerM: material.foil.resistivityOhmMm2PerM.value }
}

function listConductorCautions(
  { currentAmp }: ConductorFeature,
  riseDegC: number | null,
  temperatureDegC: number | null,
  location: CurrentLocation,
): string[] {
  const cautions: string[] = []
  if (currentAmp !== null && currentAmp > 0 && riseDegC !== null) {
    cautions.push(
      'The current relation is a screening rule for rigid boards in still air. The thinner the board, the hotter its conductors, and a flexible circuit is thinner than any that was measured.',
      ...listCurrentCautions({ currentAmp, temperatureRiseDegC: riseDegC, location }),
    )
  }
  if (temperatureDegC !== null && temperatureDegC > MAX_RESISTANCE_DEGC) {
    cautions.push(
      `At ${Number(temperatureDegC.toPrecision(3))} degC the conductor is beyond the ${MAX_RESISTANCE_DEGC} degC up to which resistance is computed.`,
    )
  }
  return cautions
}

/** A conductor that cannot be computed; what is missing says why. */
export function makeUnknown(
  { id, name, layerId }: ConductorFeature,
  missing: readonly MissingInput[],
): ConductorResult {
  return {
    conductorId: id,
    name,
    layerId,
    finishedThicknessUm: 0,
    temperatureDegC: null,
    resistanceOhm: null,
    dropVolt: null,
    capacityAmp: null,
    riseDegC: null,
    lightestFoilUm: null,
    missing,
    cautions: [],
  }
}
