import { decide, makeSourceLimit, notComputed } from '../catalogue'
import type { ContactResult, Outcome, Place, QuantityRange, ZoneLayerResult, ZoneResult } from '../results'
import { computeAdhesiveFlow, computeThicknessRange, type ThicknessContributor } from '../thickness'
import type { DesignIndex } from './design-index'
import { computeThermalCurl } from './thermal-curl'
import type { FlowPair, SectionContact, SectionLayer, ZoneSection } from './zone-section'

/** Least adhesive over the copper below which the balance of volumes leaves a conductor bare. */
const ADHESIVE_OVER_CONDUCTOR = makeSourceLimit({
  key: 'adhesiveOverConductorUm',
  value: 0,
  unit: 'um',
  sense: 'at-least',
  sourceKey: 'exactArithmetic',
})

/** Thickness of a zone, its range, and where both come from. */
export function computeZoneResult(section: ZoneSection, index: DesignIndex): ZoneResult {
  const { zone, layers, flows } = section
  let thicknessUm = 0
  for (const layer of layers) thicknessUm += layer.nominalUm
  const contributors = listContributors(section)
  const range = contributors.length === 0 ? null : computeThicknessRange(contributors)
  const shares = new Map<string, number>()
  for (const { id, shareFraction } of range?.varianceShares ?? []) {
    shares.set(id, (shares.get(id) ?? 0) + shareFraction)
  }
  // Contributors are centred on what was bought; the zone's own nominal has the flow and processing loss taken off.
  const shiftUm = range === null ? 0 : thicknessUm - range.nominalUm
  const shift = (limits: { minUm: number; maxUm: number }) => ({
    low: Math.max(0, limits.minUm + shiftUm),
    high: limits.maxUm + shiftUm,
  })
  const worstCaseUm = range === null ? { low: thicknessUm, high: thicknessUm } : shift(range.worstCase)
  return {
    zoneId: zone.id,
    name: zone.name,
    kind: zone.kind,
    layers: listLayerResults(layers, shares),
    thicknessUm,
    worstCaseUm,
    rootSumSquareUm: range === null ? { low: thicknessUm, high: thicknessUm } : shift(range.rootSumSquare),
    contact: section.contact === null ? null : computeContact(section.contact, thicknessUm, worstCaseUm),
    encapsulation: flows.map((flow) => checkEncapsulation(flow, zone)),
    thermalCurl: computeThermalCurl(section, index),
    defaultsUsed: listDefaultsUsed(section),
  }
}

function computeContact(
  { plating, finish, missing }: SectionContact,
  zoneUm: number,
  zoneRangeUm: QuantityRange,
): ContactResult {
  let platingUm = 0
  let toleranceMinusUm = finish.toleranceUm
  let tolerancePlusUm = finish.toleranceUm
  for (const { thicknessUm, toleranceUm } of plating) {
    platingUm += thicknessUm
    toleranceMinusUm += Math.min(toleranceUm, thicknessUm)
    tolerancePlusUm += toleranceUm
  }
  const addedUm = platingUm + finish.thicknessUm
  return {
    thicknessUm: zoneUm + addedUm,
    worstCaseUm: {
      low: zoneRangeUm.low + addedUm - toleranceMinusUm,
      high: zoneRangeUm.high + addedUm + tolerancePlusUm,
    },
    platingUm,
    finishUm: finish.thicknessUm,
    missing,
  }
}

/** Stands for the finish where layers are listed by id; no layer has a capital letter in its id. */
export const CONTACT_FINISH_ID = 'contact-Finish'

/** What varies over the contacts of a connector end besides its layers. */
export function listContactContributors({ contact }: ZoneSection): ThicknessContributor[] {
  if (contact === null) return []
  const added = [
    ...contact.plating.map(({ layerId, ...each }) => ({ id: layerId, ...each })),
    { id: CONTACT_FINISH_ID, ...contact.finish },
  ]
  return added
    .filter(({ thicknessUm }) => thicknessUm > 0)
    .map(({ id, thicknessUm, toleranceUm }) => ({
      id,
      nominalUm: thicknessUm,
      minusUm: Math.min(toleranceUm, thicknessUm),
      plusUm: toleranceUm,
      spread: 'normal',
    }))
}

/**
 * What varies in a zone's thickness. Copper counts with less than its own variation where adhesive flows beside it: a
 * thicker foil takes more adhesive out of the cover (volume is kept), so only its coverage's share shows outside.
 */
export function listContributors({ layers, flows }: ZoneSection): ThicknessContributor[] {
  const contributors: ThicknessContributor[] = []
  for (const { layer, asBoughtUm, copper, minusUm, plusUm } of layers) {
    if (layer.kind === 'unbonded-gap') continue
    if (copper === null) {
      contributors.push({ id: layer.id, nominalUm: asBoughtUm, minusUm, plusUm, spread: 'normal' })
    } else if (copper.coverageFraction > 0) {
      const sensitivity = copperSensitivity(layer.id, copper.coverageFraction, flows)
      const { foilUm, platingUm } = copper
      const { tolerancePlusUm, toleranceMinusUm, plating } = copper.layer
      contributors.push({
        id: layer.id,
        nominalUm: foilUm,
        minusUm: toleranceMinusUm,
        plusUm: tolerancePlusUm,
        spread: 'normal',
        sensitivity,
      })
      if (platingUm > 0) {
        contributors.push({
          id: layer.id,
          nominalUm: platingUm,
          minusUm: Math.min(plating.toleranceUm, platingUm),
          plusUm: plating.toleranceUm,
          spread: 'normal',
          sensitivity,
        })
      }
    }
  }
  return contributors
}

function copperSensitivity(layerId: string, coverageFraction: number, flows: readonly FlowPair[]): number {
  let facing = 0
  let flowing = 0
  for (const flow of flows) {
    if (flow.conductor.layer.id !== layerId) continue
    facing += 1
    // A starved adhesive has nothing more to give: thicker copper then shows in full.
    if (flow.availableUm > flow.gapUm) flowing += 1
  }
  return facing === 0 ? 1 : 1 - ((1 - coverageFraction) * flowing) / facing
}

function listLayerResults(layers: readonly SectionLayer[], shares: ReadonlyMap<string, number>): ZoneLayerResult[] {
  let topDepthUm = 0
  return layers.map(({ layer, nominalUm, minusUm, plusUm, asBoughtUm, copper }) => {
    const result: ZoneLayerResult = {
      layerId: layer.id,
      name: layer.name,
      kind: layer.kind,
      materialId: layer.kind === 'unbonded-gap' ? null : layer.materialId,
      topDepthUm,
      nominalUm,
      minUm: Math.max(0, nominalUm - minusUm),
      maxUm: nominalUm + plusUm,
      asBoughtUm,
      copper: copper === null ? null : { foilUm: copper.foilUm, platingUm: copper.platingUm, lossUm: copper.lossUm },
      coverageFraction: copper?.coverageFraction ?? null,
      varianceShareFraction: shares.get(layer.id) ?? 0,
    }
    topDepthUm += nominalUm
    return result
  })
}

/**
 * Does the adhesive that is there fill the gaps and still cover the copper: at nominal, and with copper thick, adhesive thin, and as
 * little of it flowing as its material may have?
 */
function checkEncapsulation(flow: FlowPair, zone: ZoneSection['zone']): Outcome {
  const { conductor, adhesive, copper, availableUm, facingCopperUm, flowFraction } = flow
  const places: Place[] = [
    { kind: 'layer', id: adhesive.layer.id, name: adhesive.layer.name },
    { kind: 'layer', id: conductor.layer.id, name: conductor.layer.name },
    { kind: 'zone', id: zone.id, name: zone.name },
  ]
  if (flowFraction === null) {
    return notComputed(
      ['construction', 'layers', adhesive.position, 'materialId'],
      `share of ${adhesive.material?.name ?? adhesive.layer.name} that can flow`,
      places,
    )
  }
  const flowAt = (copperChangeUm: number, adhesiveChangeUm: number, flowing: number): number => {
    const facingFraction = facingCopperUm / conductor.nominalUm
    const availableFraction = availableUm / adhesive.asBoughtUm
    const scale = flowFraction.nominal > 0 ? flowing / flowFraction.nominal : 0
    const available = (availableUm + adhesiveChangeUm * availableFraction) * scale
    const facing = facingCopperUm + copperChangeUm * facingFraction
    if (available <= 0 || facing <= 0) return available - (1 - copper.coverageFraction) * Math.max(0, facing)
    return computeAdhesiveFlow({
      adhesiveThicknessUm: available,
      conductorThicknessUm: facing,
      coverageFraction: copper.coverageFraction,
      requiredOverConductorUm: 0,
    }).encapsulationMarginUm
  }
  const value = flowAt(0, 0, flowFraction.nominal)
  return decide({
    value,
    range: {
      low: flowAt(conductor.plusUm, -adhesive.minusUm, flowFraction.low),
      high: flowAt(-conductor.minusUm, adhesive.plusUm, flowFraction.high),
    },
    limit: ADHESIVE_OVER_CONDUCTOR,
    places,
    what: `${adhesive.layer.name} left over ${conductor.layer.name} in ${zone.name}`,
    equation: 'adhesive volume less the volume of the gaps',
  })
}

function listDefaultsUsed({ flows, layers }: ZoneSection): string[] {
  const notes: string[] = []
  for (const { adhesive } of flows) {
    if (adhesive.material?.kind === 'polymer-film') {
      const note = `${adhesive.layer.name}: a third of the sheet is taken as adhesive on each face`
      if (!notes.includes(note)) notes.push(note)
    }
  }
  for (const { layer, copper } of layers) {
    if (copper !== null && copper.coverageFraction === 0)
      notes.push(`${layer.name}: no copper in this zone (coverage 0)`)
  }
  return notes
}
