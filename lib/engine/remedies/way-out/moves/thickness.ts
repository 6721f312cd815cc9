import type { Design, DielectricLayer, Layer } from '../../../design'
import { inSentence } from '../../../units'
import { editLayers, editZone, resize } from '../../edits'
import { type Mover, placeId, roundUp, shortfallOf } from './move'

/** Stiffener sheets as they are bought, um. Common practice, no published source. */
const STIFFENERS_UM = [50, 75, 100, 125, 150, 175, 200, 225, 250, 300, 400, 500]

const isStiffener = (layer: Layer): layer is DielectricLayer & { kind: 'stiffener' } => layer.kind === 'stiffener'

/** The stiffener sheet that brings a connector end nearest to the middle of its window; then what was stated of the zone. */
export const refitZone: Mover = function* (failure, { design, context }) {
  const zoneId = placeId(failure, 'zone')
  const zone = design.construction.zones.find(({ id }) => id === zoneId)
  const result = zone === undefined ? null : context.findZoneResult(zone.id)
  if (zone === undefined || result === null) return
  const present = new Set(zone.presence.map(({ layerId }) => layerId))
  const isUm = (result.contact?.thicknessUm ?? result.thicknessUm) || result.thicknessUm
  const window = zone.connectorWindow
  const wantedUm = window === null ? zone.statedThicknessUm : (window.minUm + window.maxUm) / 2
  for (const layer of design.construction.layers.filter((each) => present.has(each.id) && isStiffener(each))) {
    if (wantedUm === null || !isStiffener(layer)) continue
    const idealUm = layer.thicknessUm + wantedUm - isUm
    for (const thicknessUm of STIFFENERS_UM.toSorted((a, b) => Math.abs(a - idealUm) - Math.abs(b - idealUm)).slice(
      0,
      3,
    )) {
      if (thicknessUm === layer.thicknessUm) continue
      yield {
        id: `stiffener:${layer.id}`,
        title: 'Another stiffener thickness',
        detail: `${layer.name}: ${inSentence(layer.thicknessUm, 'um')} to ${inSentence(thicknessUm, 'um')}`,
        relaxes: null,
        cautions: ['Ask the fabricator whether this sheet is held.'],
        design: editLayers(design, (each) => (each.id === layer.id ? resize(layer, thicknessUm) : each)),
      }
    }
  }
  if (failure.item.id !== 'stated-thickness' || zone.statedThicknessUm === null) return
  const statedThicknessUm = Math.round(result.thicknessUm)
  yield {
    id: `stated-thickness:${zone.id}`,
    title: 'Stated thickness corrected',
    detail: `${zone.name}: ${inSentence(zone.statedThicknessUm, 'um')} to ${inSentence(statedThicknessUm, 'um')}, the sum of its layers`,
    relaxes: `stated thickness of ${zone.name}, ${inSentence(zone.statedThicknessUm, 'um')}`,
    cautions: [],
    design: editZone(design, zone.id, (each) => ({ ...each, statedThicknessUm })),
  }
}

const FILLERS: readonly Layer['kind'][] = ['adhesive', 'no-flow-prepreg', 'bondply']
/** Steps in which adhesive and prepreg are bought, um. Our choice. */
const STEP_UM = 5

/** Adhesive or prepreg that leaves too little over the copper gets what it lacks; all of a kind at once, so that boards stay symmetric. */
export const thickenFiller: Mover = function* (failure, { design, failures }) {
  if (failure.item.id !== 'copper-encapsulation') return
  const lacking = new Map<string, number>()
  for (const other of failures.filter(({ item }) => item.id === failure.item.id)) {
    for (const { kind, id } of other.outcome.places) {
      if (kind === 'layer') lacking.set(id, Math.max(lacking.get(id) ?? 0, shortfallOf(other)))
    }
  }
  const layers = design.construction.layers.filter(
    (layer): layer is DielectricLayer => FILLERS.includes(layer.kind) && lacking.has(layer.id),
  )
  if (layers.length === 0) return
  const mostUm = Math.max(...layers.map(({ id }) => lacking.get(id) ?? 0))
  for (const extraUm of [0, STEP_UM, 2 * STEP_UM, 4 * STEP_UM]) {
    const byUm = roundUp(mostUm, STEP_UM) + extraUm
    const ids = new Set(layers.map(({ id }) => id))
    yield {
      id: 'thicker-filler',
      title: 'Thicker prepreg or adhesive over copper',
      detail: layers
        .map(
          (layer) =>
            `${layer.name}: ${inSentence(layer.thicknessUm, 'um')} to ${inSentence(layer.thicknessUm + byUm, 'um')}`,
        )
        .join('; '),
      relaxes: null,
      cautions: ['The boards become thicker by as much.'],
      design: thicken(design, ids, byUm),
    }
  }
}

function thicken(design: Design, ids: ReadonlySet<string>, byUm: number): Design {
  return editLayers(design, (layer) =>
    ids.has(layer.id) && layer.kind !== 'conductor'
      ? resize(layer as DielectricLayer, layer.thicknessUm + byUm)
      : layer,
  )
}
