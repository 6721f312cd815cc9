import type { ConductorLayer, Layer, Material, Zone } from '../design'
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
  readonly platingUm: number
  readonly lossUm: number
  readonly coverageFraction: number
  /** What stands between the conductors; null is air. */
  fillMaterial: Material | null
}

/** An adhesive that flows between the conductors beside it in lamination. */
export interface FlowPair {
  readonly conductor: SectionLayer
  readonly copper: SectionCopper
  readonly adhesive: SectionLayer
  /** Adhesive at hand for this conductor layer, as a thickness over the area. */
  readonly availableUm: number
  /** Copper that faces this adhesive: all of it, or half where adhesive flows in from both faces. */
  readonly facingCopperUm: number
  readonly gapUm: number
}

export interface ZoneSection {
  readonly zone: Zone
  /** From the top face down. */
  readonly layers: readonly SectionLayer[]
  readonly flows: readonly FlowPair[]
}

/** Share of a bondply with a carrier film that each face's adhesive makes up, unless its maker says otherwise. */
const CARRIED_BONDPLY_FACE_FRACTION = 1 / 3

/**
 * The layers of a zone as they are after processing.
 *
 * Rules    Foil grows by panel or pattern plating in every zone, by button plating only outside flex zones (it is on the
 *          pads), and shrinks by the processing loss. A conductor layer with coverage 0 has no copper there.
 *          Adhesive, bondply and prepreg that touch a conductor layer flow into its gaps, and lose that volume; the
 *          adhesive between a foil and the base film of its own clad does not, since the foil was whole when it was bonded.
 *          Where adhesive touches both faces each fills half of the gap.
 *          The gaps hold what flowed in, else what lies on the layer (coverlay film, mask, laminate), else air.
 */
export function buildZoneSection(zone: Zone, index: DesignIndex): ZoneSection {
  const layers = listSectionLayers(zone, index)
  return { zone, layers, flows: laminate(layers) }
}

function listSectionLayers(zone: Zone, index: DesignIndex): SectionLayer[] {
  const layers: SectionLayer[] = []
  for (const { layerId, coverageFraction } of zone.presence) {
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
      layers.push(
        finishConductor(
          layer,
          position,
          coverageFraction ?? layer.coverageFraction,
          zone,
          index.findMaterial(layer.materialId),
        ),
      )
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
  coverageFraction: number,
  zone: Zone,
  material: Material | null,
): SectionLayer {
  const { process } = layer.plating
  const hasCopper = coverageFraction > 0
  const isPlatedHere =
    hasCopper && (process === 'panel' || process === 'pattern' || (process === 'button' && zone.kind !== 'flex'))
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
      lossUm: layer.processingLossUm,
      coverageFraction,
      fillMaterial: null,
    },
  }
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
    const faceUm =
      adhesive.material?.kind === 'polymer-film' ? adhesive.asBoughtUm * CARRIED_BONDPLY_FACE_FRACTION : null
    let neededUm = 0
    for (const need of needs) neededUm += need.gapUm
    for (const need of needs) {
      const shareFraction = neededUm > 0 ? need.gapUm / neededUm : 1 / needs.length
      const availableUm = faceUm ?? adhesive.asBoughtUm * shareFraction
      flows.push({ ...need, adhesive, availableUm })
      adhesive.nominalUm -= Math.min(availableUm, need.gapUm)
    }
    // Shares that add up to the whole may leave a rounding remainder below zero.
    adhesive.nominalUm = Math.max(0, adhesive.nominalUm)
  }
  return flows
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
