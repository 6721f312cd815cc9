import {
  type ConductorNeeds,
  type CurrentLocation,
  currentCapacityAmp,
  findLightestFoil,
  HATCH_BAR_OVER_PITCH,
  hatchConductanceFraction,
  isHatchConductionKnown,
  listCurrentCautions,
  MIN_PITCHES_ACROSS,
  resistanceOhm,
  skinDepthUm,
  temperatureRiseDegC,
  voltageDropVolt,
} from '../conductors'
import type { ConductorFeature, Design, Material, Zone } from '../design'
import { describeDefaultSpreads, readEnds } from '../materials'
import type { ConductorResult, MissingInput } from '../results'
import { inSentence } from '../units'
import { computeConductorRange } from './conductor-range'
import type { SectionLayer, ZoneSection } from './zone-section'

/** What a conductor layer is like where it is thinnest: that is where current and resistance are decided. */
export interface ThinnestCopper {
  readonly layer: SectionLayer
  readonly location: CurrentLocation
  readonly zone: Zone
  /** Index of the zone in the construction. */
  readonly zonePosition: number
}

/** For each conductor layer with copper, its thinnest finished copper over all zones, and whether it is covered there. */
export function findThinnestCopper(sections: readonly ZoneSection[]): Map<string, ThinnestCopper> {
  const thinnest = new Map<string, ThinnestCopper>()
  sections.forEach(({ layers, zone }, zonePosition) => {
    layers.forEach((layer, at) => {
      if (layer.copper === null || layer.copper.coverageFraction === 0) return
      const known = thinnest.get(layer.layer.id)
      if (known !== undefined && conductingUm(known.layer) <= conductingUm(layer)) return
      thinnest.set(layer.layer.id, {
        layer,
        location: isCovered(layers[at - 1]) && isCovered(layers[at + 1]) ? 'internal' : 'external',
        zone,
        zonePosition,
      })
    })
  })
  return thinnest
}

/** Thickness of solid copper that conducts as much; 0 where a hatch is not known, or not one whose conduction is known. */
function conductingUm({ nominalUm, copper }: SectionLayer): number {
  if (copper?.layer.planePattern !== 'hatched') return nominalUm
  const barOverPitch = copper.hatch === null ? 0 : copper.hatch.barMm / copper.hatch.pitchMm
  return isHatchConductionKnown(barOverPitch) ? nominalUm * hatchConductanceFraction(barOverPitch) : 0
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
  const { widthMm } = feature
  if (widthMm === null) {
    lacks('widthMm', 'width')
    return makeUnknown(feature, missing)
  }
  const hatch = findHatchedWidth({ ...feature, widthMm }, thinnest)
  if ('missing' in hatch) return makeUnknown(feature, [hatch.missing])
  if ('cannotTell' in hatch) return { ...makeUnknown(feature, []), cannotTell: hatch.cannotTell }
  const section = { widthMm: hatch.widthMm, thicknessUm: layer.nominalUm }
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
  const cautions = [
    ...listConductorCautions(feature, riseDegC, temperatureDegC, location),
    ...describeSkinEffect(feature, layer),
    ...describeDefaultResistivity(layer.material),
  ]
  const isInRange = temperatureDegC !== null && temperatureDegC >= -200 && temperatureDegC <= MAX_RESISTANCE_DEGC
  const resistivity = layer.material?.foil?.resistivityOhmMm2PerM.value
  const ohmAt = (degC: number | null): number | null =>
    lengthMm === null || degC === null
      ? null
      : resistanceOhm({
          runs: [{ ...section, lengthMm }],
          temperatureDegC: degC,
          ...(resistivity === undefined ? {} : { resistivityOhmMm2PerM: resistivity }),
        })
  const ohm = isInRange ? ohmAt(temperatureDegC) : null
  const isTooHot = temperatureDegC !== null && temperatureDegC > MAX_RESISTANCE_DEGC
  const leastOhm = isTooHot ? ohmAt(MAX_RESISTANCE_DEGC) : null
  return {
    conductorId: feature.id,
    name: feature.name,
    layerId: feature.layerId,
    finishedThicknessUm: layer.nominalUm,
    temperatureDegC,
    resistanceOhm: ohm,
    dropVolt: ohm === null || currentAmp === null ? null : voltageDropVolt({ resistanceOhm: ohm, currentAmp }),
    dropAtLeastVolt:
      leastOhm === null || currentAmp === null ? null : voltageDropVolt({ resistanceOhm: leastOhm, currentAmp }),
    capacityAmp:
      allowedRiseDegC === null ? null : currentCapacityAmp(section, { temperatureRiseDegC: allowedRiseDegC, location }),
    riseDegC,
    lightestFoilUm: findLightestFoilUm(
      { ...feature, widthMm: hatch.widthMm },
      layer,
      location,
      isInRange ? temperatureDegC : null,
    ),
    missing,
    cannotTell: null,
    cautions,
    ...computeConductorRange(
      { ...feature, widthMm: section.widthMm },
      layer,
      location,
      isInRange ? operatingMaxDegC : null,
    ),
  }
}

/**
 * The width of solid copper that conducts as much: a conductor's own, or what the openings of a hatched plane leave of it. The zone in
 * which the layer conducts least stands for it.
 */
function findHatchedWidth(
  { name, widthMm }: ConductorFeature & { readonly widthMm: number },
  { layer, zone, zonePosition }: ThinnestCopper,
): { widthMm: number } | { missing: MissingInput } | { cannotTell: string } {
  const { copper } = layer
  if (copper === null || copper.layer.planePattern !== 'hatched') return { widthMm }
  const { hatch } = copper
  if (hatch === null) {
    const at = zone.presence.findIndex(({ layerId }) => layerId === copper.layer.id)
    return {
      missing: {
        path: ['construction', 'zones', zonePosition, 'presence', at, 'hatch'],
        label: `bar and pitch of the hatch on ${copper.layer.name} in ${zone.name}`,
      },
    }
  }
  const barOverPitch = hatch.barMm / hatch.pitchMm
  if (!isHatchConductionKnown(barOverPitch)) {
    const { low, high } = HATCH_BAR_OVER_PITCH
    return {
      cannotTell: `${name} is a hatch of bars ${inSentence(barOverPitch)} of the pitch, and conduction is known from ${low} to ${high}`,
    }
  }
  if (widthMm < MIN_PITCHES_ACROSS * hatch.pitchMm) {
    return {
      cannotTell: `${name} is narrower than ${MIN_PITCHES_ACROSS} pitches of its hatch, so that single bars decide`,
    }
  }
  return { widthMm: widthMm * hatchConductanceFraction(barOverPitch) }
}

function findLightestFoilUm(
  { widthMm, lengthMm, currentAmp, allowedRiseDegC, allowedDropVolt }: ConductorFeature,
  { copper, material }: SectionLayer,
  location: CurrentLocation,
  temperatureDegC: number | null,
): number | null {
  if (copper === null || widthMm === null || currentAmp === null || currentAmp === 0) return null
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

function describeDefaultResistivity(material: Material | null): string[] {
  const resistivity = material?.foil?.resistivityOhmMm2PerM
  const isDefault = resistivity !== undefined && readEnds('resistivityOhmMm2PerM', resistivity).isDefault
  return isDefault ? describeDefaultSpreads(new Set([material?.name ?? ''])) : []
}

function readResistivity(material: Material | null): { resistivityOhmMm2PerM: number } | Record<string, never> {
  return material?.foil == null ? {} : { resistivityOhmMm2PerM: material.foil.resistivityOhmMm2PerM.value }
}

/** Resistance, drop and rise are those of direct current: where the highest frequency keeps to the faces of the copper, they are too low. */
function describeSkinEffect({ name, frequencyMhz }: ConductorFeature, layer: SectionLayer): string[] {
  if (frequencyMhz === null) return []
  const depthUm = skinDepthUm(frequencyMhz * 1e6, layer.material?.foil?.resistivityOhmMm2PerM.value)
  return layer.nominalUm <= 2 * depthUm
    ? []
    : [
        `At ${inSentence(frequencyMhz, 'mhz')} current keeps to some ${inSentence(depthUm, 'um')} from each face, and ${name} is ${inSentence(layer.nominalUm, 'um')} thick: resistance, drop and rise are computed for direct current and are higher at that frequency.`,
      ]
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
      `At ${inSentence(temperatureDegC, 'degC')} the conductor is beyond the ${inSentence(MAX_RESISTANCE_DEGC, 'degC')} up to which resistance is computed.`,
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
    capacityRangeAmp: null,
    riseRangeDegC: null,
    resistanceRangeOhm: null,
    dropRangeVolt: null,
    dropAtLeastVolt: null,
    missing,
    cannotTell: null,
    cautions: [],
  }
}
