import {
  type Construction,
  type Design,
  FEATURE_FIELDS,
  findHoldingLayer,
  getChoiceWord,
  LAYER_FIELDS,
  type Layer,
  listStiffeners,
  NOT_STATED,
} from '@/lib/engine'
import { digitsAsEntered } from '@/lib/engine/units'
import { nameBends } from './bends'
import { getCallOut } from './layers'
import type { SheetColumn, SheetTable } from './model'
import type { SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

const STIFFENER_FIELDS = FEATURE_FIELDS.stiffeners.entry

/** Stiffeners with what holds them; a stiffener layer of which no detail was typed in has a row too. */
export function makeStiffenerTable(design: Design, words: SheetWords): SheetTable | null {
  const { construction } = design
  const layerOf = (layerId: string) => construction.layers.find(({ id }) => id === layerId)
  const stiffeners = listStiffeners(design)
  if (stiffeners.length === 0) return null
  const bends = nameBends(design)
  const um = words.thicknessUnit
  const mm = words.planUnit
  const layerCells = (layer: Layer | undefined) =>
    layer === undefined || layer.kind === 'unbonded-gap'
      ? ['', '', '', '', '', '']
      : [
          words.layer(layer.id),
          findFace(construction, layer.id),
          listZones(construction, layer.id, words),
          getCallOut(design, layer),
          `${words.enteredThickness(layer.thicknessUm)} ${words.deviation(layer.tolerancePlusUm, layer.toleranceMinusUm)}`,
          describeAdhesive(design, layer.id, words),
        ]
  return {
    kind: 'table',
    id: 'stiffeners',
    title: 'Stiffeners',
    keyColumnCount: 1,
    columns: [
      column('Ref.', 11),
      column(STIFFENER_FIELDS.name.label, 28, 2),
      column(STIFFENER_FIELDS.layerId.label, 12, 0, true),
      column('Face', 14),
      column('Zones', 16),
      column('Call-out', 38, 3),
      column(`${LAYER_FIELDS.thicknessUm.label}, ${um}`, 26, 0, true),
      column('Held by', 38, 3),
      column(STIFFENER_FIELDS.purpose.label, 20),
      column(STIFFENER_FIELDS.bonded.label, 20),
      column(`${STIFFENER_FIELDS.heatRatingDegC.label}, °C`, 20, 0, true),
      column(`Overlap with the coverlay end, ${mm}`, 25, 0, true),
      column(`${STIFFENER_FIELDS.nearestBend.head}, ${mm}`, 24, 0, true),
    ],
    rows: [
      ...stiffeners.map((stiffener, index) => ({
        id: stiffener.id,
        cells: [
          `S${index + 1}`,
          stiffener.name,
          ...layerCells(layerOf(stiffener.layerId)),
          getChoiceWord(FEATURE_FIELDS.stiffeners.entry.purpose, stiffener.purpose),
          getChoiceWord(STIFFENER_FIELDS.bonded, stiffener.bonded),
          stiffener.heatRatingDegC === null ? NOT_STATED : digitsAsEntered(stiffener.heatRatingDegC),
          words.plan(stiffener.coverlayOverlapMm),
          stiffener.nearestBend === null
            ? NOT_STATED
            : `${words.plan(stiffener.nearestBend.distanceMm)} (${bends.get(stiffener.nearestBend.bendId) ?? ''})`,
        ],
      })),
    ],
  }
}

/** Which face of the part the layer lies on, seen from the conductors. */
function findFace({ layers }: Construction, layerId: string): string {
  const at = layers.findIndex(({ id }) => id === layerId)
  const first = layers.findIndex(({ kind }) => kind === 'conductor')
  const last = layers.findLastIndex(({ kind }) => kind === 'conductor')
  return first === -1 ? '' : at < first ? 'top' : at > last ? 'bottom' : 'inside'
}

/** Of a stiffener that lies nowhere. */
export const NO_ZONES = 'none'

function listZones({ zones }: Construction, layerId: string, words: SheetWords): string {
  const found = zones.filter(({ presence }) => presence.some((each) => each.layerId === layerId))
  return found.length === 0 ? NO_ZONES : found.map(({ id }) => words.zone(id)).join(', ')
}

function describeAdhesive(design: Design, layerId: string, words: SheetWords): string {
  const holder = findHoldingLayer(design.construction, layerId)
  if (holder === null) return NOT_STATED
  return `${getCallOut(design, holder)}, ${words.enteredThickness(holder.thicknessUm)} ${words.thicknessUnit} (layer ${words.layer(holder.id)})`
}
