import {
  type ConductorLayer,
  type Hatch,
  hatchCoverageFraction,
  isWithoutMetal,
  type Layer,
  type Material,
  type Zone,
} from '../design'
import type { MissingInput } from '../results'
import { computeFinishedCopper } from '../thickness'
import type { DesignIndex } from './design-index'

/** One layer of a zone with its finished thickness. */
export interface SectionLayer {
  readonly layer: Layer
  /** Index in the construction's list of layers. */
  readonly position: number
  readonly material: Material | null
  /** Thickness as entered: foil or sheet as bought. */
  readonly asBoughtUm: number
  /** Thickness in the finished zone, measured over a conductor. */
  nominalUm: number
  readonly minusUm: number
  readonly plusUm: number
  /** Conductors only. */
  readonly copper: SectionCopper | null
}

export interface SectionCopper {
  readonly layer: ConductorLayer
  readonly foilUm: number
  /** Plated copper on the conductors; what is on pads alone does not count here. */
  readonly platingUm: number
  /** Plated copper on lands and pads, conductors or not; null where nobody said whether this zone's pads are plated. */
  readonly padPlatingUm: number | null
  readonly lossUm: number
  readonly coverageFraction: number
  /** Bars of a hatched plane; null where the layer is not hatched, or bar and pitch are not known. */
  readonly hatch: Hatch | null
  /** What stands between the conductors; null is air. */
  fillMaterial: Material | null
}

/** An adhesive that flows between the conductors beside it in lamination. */
export interface FlowPair {
  readonly conductor: SectionLayer
  readonly copper: SectionCopper
  readonly adhesive: SectionLayer
  /** Adhesive at hand for this conductor layer, as a thickness over the area: what of it can flow. */
  readonly availableUm: number
  /** Share of the adhesive that can flow, over the spread of its material; null where its record does not say. */
  readonly flowFraction: FlowFraction | null
  /** Copper that faces this adhesive: all of it, or half where adhesive flows in from both faces. */
  readonly facingCopperUm: number
  readonly gapUm: number
}

export interface FlowFraction {
  readonly nominal: number
  readonly low: number
  readonly high: number
}

export interface ZoneSection {
  readonly zone: Zone
  /** From the top face down. */
  readonly layers: readonly SectionLayer[]
  /** Connector ends only. */
  readonly contact: SectionContact | null
  readonly flows: readonly FlowPair[]
}

/** What lies on the contacts of a connector end besides its layers. */
export interface SectionContact {
  readonly plating: readonly { readonly layerId: string; readonly thicknessUm: number; readonly toleranceUm: number }[]
  readonly finish: { readonly thicknessUm: number; readonly toleranceUm: number }
  readonly missing: readonly MissingInput[]
}

/** What stands between the conductors of a layer in a zone; null is air. */
export function findFill(sections: readonly ZoneSection[], zoneId: string, layerId: string): Material | null {
  const section = sections.find(({ zone }) => zone.id === zoneId)
  return section?.layers.find(({ layer }) => layer.id === layerId)?.copper?.fillMaterial ?? null
}

/** Share of a bondply with a carrier film that each face's adhesive makes up, unless its maker says otherwise. */
const CARRIED_BONDPLY_FACE_FRACTION = 1 / 3

/**
 * The layers of a zone as they are after processing.
 *
 * Rules    Foil grows by plating where the zone says that its whole copper is plated; panel and pattern plating do so unless the
 *          zone says otherwise. Plating on pads alone leaves the conductors as they are. Foil shrinks by the processing loss. A
 *          conductor layer with coverage 0 has no copper there; that of a hatched plane follows from bar and pitch.
 *          Adhesive, bondply and prepreg that touch a conductor layer flow into its gaps, and lose that volume; the
 *          adhesive between a foil and the base film of its own clad does not, since the foil was whole when it was bonded.
 *          Where adhesive touches both faces each fills half of the gap. A prepreg gives no more than the resin of it that flows.
 *          The gaps hold what flowed in, else what lies on the layer (coverlay film, mask, laminate), else air.
 */
export function buildZoneSection(zone: Zone, index: DesignIndex): ZoneSection {
  const layers = listSectionLayers(zone, index)
  return {
    zone,
    layers,
    contact: zone.kind === 'finger' ? findContact(zone, layers, index) : null,
    flows: laminate(layers),
  }
}

const NO_FINISH = { thicknessUm: 0, toleranceUm: 0 }

function findContact(zone: Zone, layers: readonly SectionLayer[], { design }: DesignIndex): SectionContact {
  const missing: MissingInput[] = []
  const zonePath = ['construction', 'zones', design.construction.zones.indexOf(zone)]
  const plating: { layerId: string; thicknessUm: number; toleranceUm: number }[] = []
  for (const { layer, copper } of layers) {
    if (copper === null || copper.coverageFraction === 0) continue
    if (copper.padPlatingUm === null) {
      const at = zone.presence.findIndex(({ layerId }) => layerId === layer.id)
      missing.push({
        path: [...zonePath, 'presence', at, 'platedCopper'],
        label: `whether the contacts on ${layer.name} in ${zone.name} are plated`,
      })
      continue
    }
    // Where the whole copper is plated the layer has it already.
    const thicknessUm = copper.padPlatingUm - copper.platingUm
    if (thicknessUm > 0) {
      plating.push({ layerId: layer.id, thicknessUm, toleranceUm: copper.layer.plating.toleranceUm })
    }
  }
  const hasNoMetal = isWithoutMetal(design.brief.surfaceFinish)
  if (zone.contactFinish === null && !hasNoMetal) {
    missing.push({
      path: [...zonePath, 'contactFinish'],
      label: `thickness of the finish on the contacts of ${zone.name}`,
    })
  }
  return { plating, finish: zone.contactFinish ?? NO_FINISH, missing }
}

function listSectionLayers(zone: Zone, index: DesignIndex): SectionLayer[] {
  const layers: SectionLayer[] = []
  for (const presence of zone.presence) {
    const { layerId } = presence
    const layer = index.layersById.get(layerId)
    const position = index.layerPositions.get(layerId)
    if (layer === undefined || position === undefined) continue
    if (layer.kind === 'unbonded-gap') {
      const { thicknessUm } = layer
      layers.push({
        layer,
        position,
        material: null,
        asBoughtUm: thicknessUm,
        nominalUm: thicknessUm,
        minusUm: 0,
        plusUm: 0,
        copper: null,
      })
    } else if (layer.kind === 'conductor') {
      layers.push(finishConductor(layer, position, presence, index.findMaterial(layer.materialId)))
    } else {
      layers.push({
        layer,
        position,
        material: index.findMaterial(layer.materialId),
        asBoughtUm: layer.thicknessUm,
        nominalUm: layer.thicknessUm,
        minusUm: layer.toleranceMinusUm,
        plusUm: layer.tolerancePlusUm,
        copper: null,
      })
    }
  }
  return layers.sort((a, b) => a.position - b.position)
}

function finishConductor(
  layer: ConductorLayer,
  position: number,
  presence: Zone['presence'][number],
  material: Material | null,
): SectionLayer {
  const hatch = layer.planePattern === 'hatched' ? presence.hatch : null
  const coverageFraction =
    hatch === null ? (presence.coverageFraction ?? layer.coverageFraction) : hatchCoverageFraction(hatch)
  const hasCopper = coverageFraction > 0
  const plated = findPlatedCopper(layer, presence)
  const isPlatedHere = hasCopper && plated === 'whole'
  const platingUm = isPlatedHere ? layer.plating.thicknessUm : 0
  const finished = computeFinishedCopper({
    foilThicknessUm: layer.thicknessUm,
    platingThicknessUm: platingUm,
    processingLossUm: layer.processingLossUm,
  })
  const nominalUm = hasCopper ? finished.finishedThicknessUm : 0
  const platingToleranceUm = isPlatedHere ? Math.min(layer.plating.toleranceUm, platingUm) : 0
  return {
    layer,
    position,
    material,
    asBoughtUm: layer.thicknessUm,
    nominalUm,
    // A foil can lose at most what is left of it after processing.
    minusUm: hasCopper ? Math.min(layer.toleranceMinusUm + platingToleranceUm, nominalUm) : 0,
    plusUm: hasCopper ? layer.tolerancePlusUm + platingToleranceUm : 0,
    copper: {
      layer,
      foilUm: layer.thicknessUm,
      platingUm,
      padPlatingUm: plated === null ? null : plated === 'none' || !hasCopper ? 0 : layer.plating.thicknessUm,
      lossUm: layer.processingLossUm,
      coverageFraction,
      hatch,
      fillMaterial: null,
    },
  }
}

/**
 * Which copper of a zone is plated: as the zone states it, else what the process does by itself. Pads-only plating may or may not be on
 * the pads of a zone: null where nobody said.
 */
function findPlatedCopper(
  { plating }: ConductorLayer,
  { platedCopper }: Zone['presence'][number],
): Zone['presence'][number]['platedCopper'] {
  if (plating.process === 'none') return 'none'
  if (platedCopper !== null) return platedCopper
  return plating.process === 'button' ? null : 'whole'
}

/** Lets adhesives flow, takes their loss off their thickness, and says what fills each conductor layer's gaps. */
function laminate(layers: readonly SectionLayer[]): FlowPair[] {
  interface Need {
    readonly conductor: SectionLayer
    readonly copper: SectionCopper
    readonly facingCopperUm: number
    readonly gapUm: number
  }
  const needsByAdhesive = new Map<SectionLayer, Need[]>()
  for (let at = 0; at < layers.length; at += 1) {
    const conductor = layers[at]
    if (conductor?.copper == null) continue
    const { copper } = conductor
    const neighbours = [at - 1, at + 1]
    const flowing: SectionLayer[] = []
    for (const neighbourAt of neighbours) {
      const neighbour = layers[neighbourAt]
      const beyond = layers[neighbourAt + (neighbourAt - at)]
      if (neighbour !== undefined && doesFlow(neighbour, beyond)) flowing.push(neighbour)
    }
    copper.fillMaterial = flowing[0]?.material ?? findCover(layers[at - 1], layers[at + 1])
    if (copper.coverageFraction === 0 || flowing.length === 0) continue
    const facingCopperUm = conductor.nominalUm / flowing.length
    const gapUm = (1 - copper.coverageFraction) * facingCopperUm
    for (const adhesive of flowing) {
      const needs = needsByAdhesive.get(adhesive)
      const need = { conductor, copper, facingCopperUm, gapUm }
      if (needs === undefined) needsByAdhesive.set(adhesive, [need])
      else needs.push(need)
    }
  }

  const flows: FlowPair[] = []
  for (const [adhesive, needs] of needsByAdhesive) {
    const flowFraction = findFlowFraction(adhesive.material)
    const flowingUm = adhesive.asBoughtUm * (flowFraction?.nominal ?? 1)
    // Of a bondply with a carrier film each face has its own adhesive; any other is shared by the layers that it touches.
    const isPerFace = adhesive.material?.kind === 'polymer-film'
    let neededUm = 0
    for (const need of needs) neededUm += need.gapUm
    for (const need of needs) {
      const shareFraction = neededUm > 0 ? need.gapUm / neededUm : 1 / needs.length
      const availableUm = isPerFace ? flowingUm : flowingUm * shareFraction
      flows.push({ ...need, adhesive, availableUm, flowFraction })
      adhesive.nominalUm -= Math.min(availableUm, need.gapUm)
    }
    // Shares that add up to the whole may leave a rounding remainder below zero.
    adhesive.nominalUm = Math.max(0, adhesive.nominalUm)
  }
  return flows
}

const ALL_FLOWS: FlowFraction = { nominal: 1, low: 1, high: 1 }
const ONE_FACE_FLOWS: FlowFraction = {
  nominal: CARRIED_BONDPLY_FACE_FRACTION,
  low: CARRIED_BONDPLY_FACE_FRACTION,
  high: CARRIED_BONDPLY_FACE_FRACTION,
}

/** Null for a prepreg whose record does not say how much of it flows: the glass does not. */
function findFlowFraction(material: Material | null): FlowFraction | null {
  if (material === null) return ALL_FLOWS
  if (material.kind === 'polymer-film') return ONE_FACE_FLOWS
  const { flowFraction } = material
  if (flowFraction === null) return material.kind === 'prepreg' ? null : ALL_FLOWS
  const { value, spread } = flowFraction
  return { nominal: value, low: spread?.low ?? value, high: spread?.high ?? value }
}

function doesFlow(candidate: SectionLayer, beyond: SectionLayer | undefined): boolean {
  switch (candidate.layer.kind) {
    case 'bondply':
    case 'no-flow-prepreg':
      return true
    case 'adhesive':
      return beyond?.layer.kind !== 'base-film'
    default:
      return false
  }
}

/** What lies on a conductor layer that no adhesive reaches; base film and clad adhesive lie under it and fill nothing. */
function findCover(above: SectionLayer | undefined, below: SectionLayer | undefined): Material | null {
  for (const candidate of [above, below]) {
    const kind = candidate?.layer.kind
    if (kind === 'coverlay-film' || kind === 'solder-mask' || kind === 'shield-film') return candidate?.material ?? null
  }
  return null
}
