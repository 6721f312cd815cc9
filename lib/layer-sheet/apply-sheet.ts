import {
  ASSUMABLE_FIELDS,
  type Design,
  type Layer,
  makeFreshId,
  makePresence,
  UNKNOWN_THROUGH_THICKNESS,
  type Zone,
} from '@/lib/engine'
import { LAYER_COLUMN_KEYS } from './columns'
import type { LayerTable } from './layer-table'
import type { InZone, LayerRow, SheetZone } from './rows'
import { readLayerRowOf } from './write-sheet'

export interface SheetEntry {
  /** Layer of the design that the row belonged to when the sheet was opened; null is a new one. */
  readonly layerId: string | null
  readonly texts: readonly string[]
  readonly row: LayerRow
}

/**
 * The design with the sheet's layers and zones in place of its own. A layer goes on being the one that it was, by its name where that is
 * unique, else by its row, so that what refers to it still does; what the sheet cannot say (hatches, finishes, measured constants) stays with it.
 *
 * @param table  that the texts were read with: a text that is as the design's own value is written leaves that value exact
 */
export function applyLayerSheet(
  design: Design,
  table: LayerTable,
  sheetZones: readonly SheetZone[],
  entries: readonly SheetEntry[],
): Design {
  const ids = chooseLayerIds(design, entries)
  const layers = entries.map(({ row, texts }, index): Layer => {
    const id = ids[index] ?? ''
    const present = design.construction.layers.find((layer) => layer.id === id)
    const read = { ...row.layer, id }
    return present === undefined ? read : keepExact(design, table, present, read, texts)
  })
  const taken = [...design.construction.zones]
  const marks: string[] = []
  const zones = sheetZones.map((sheetZone, at): Zone => {
    const present = design.construction.zones.find(({ id }) => id === sheetZone.id) ?? null
    const cells = entries.map(({ row }) => row.inZones[at] ?? null)
    const zone = makeZone(present, sheetZone, makeFreshId('zone', taken), layers, cells)
    if (present === null) taken.push(zone)
    marks.push(...markZone(design, present, sheetZone, zone))
    return zone
  })
  const layerMarks = entries.flatMap(({ row }, index) => row.assumed.map((field) => `layers.${ids[index]}.${field}`))
  const others = design.assumed.filter((mark) => !mark.startsWith('layers.') && !mark.startsWith('zones.'))
  return { ...design, construction: { layers, zones }, assumed: [...layerMarks, ...marks, ...others] }
}

function chooseLayerIds(design: Design, entries: readonly SheetEntry[]): string[] {
  const { layers } = design.construction
  const fold = (name: string) => name.toLowerCase()
  const isUnique = (name: string, names: readonly string[]) =>
    names.filter((other) => fold(other) === fold(name)).length === 1
  const names = entries.map(({ row }) => row.layer.name)
  const presentNames = layers.map(({ name }) => name)
  const byName = entries.map(({ row }) => {
    const { name } = row.layer
    const isKnown = isUnique(name, names) && isUnique(name, presentNames)
    return isKnown ? (layers.find((layer) => fold(layer.name) === fold(name))?.id ?? null) : null
  })
  const claimed = new Set(byName.filter((id) => id !== null))
  const taken = layers.map(({ id }) => ({ id }))
  return entries.map(({ layerId }, index) => {
    const named = byName[index]
    if (named !== null && named !== undefined) return named
    if (layerId !== null && !claimed.has(layerId)) {
      claimed.add(layerId)
      return layerId
    }
    const id = makeFreshId('layer', taken)
    taken.push({ id })
    return id
  })
}

/** Six digits of mil are not the micrometres that they were written from: what nobody touched keeps its value. */
function keepExact(design: Design, table: LayerTable, present: Layer, read: Layer, texts: readonly string[]): Layer {
  const row = readLayerRowOf(design, present, [])
  const isUntouched = (key: (typeof LAYER_COLUMN_KEYS)[number]) => {
    const at = LAYER_COLUMN_KEYS.indexOf(key)
    return (table.columns[at]?.write(row) ?? '') === (texts[at] ?? '')
  }
  if (present.kind !== read.kind) return read
  const kept = isUntouched('thicknessUm') ? { ...read, thicknessUm: present.thicknessUm } : read
  if (kept.kind === 'unbonded-gap' || present.kind === 'unbonded-gap') return kept
  const solid = {
    ...kept,
    ...(isUntouched('tolerancePlusUm') ? { tolerancePlusUm: present.tolerancePlusUm } : {}),
    ...(isUntouched('toleranceMinusUm') ? { toleranceMinusUm: present.toleranceMinusUm } : {}),
  }
  if (solid.kind !== 'conductor' || present.kind !== 'conductor') return solid
  const { plating } = solid
  const isPlatedAsBefore = plating.process === present.plating.process && plating.process !== 'none'
  return {
    ...solid,
    ...(isUntouched('processingLossUm') ? { processingLossUm: present.processingLossUm } : {}),
    plating: isPlatedAsBefore
      ? {
          process: plating.process,
          thicknessUm: isUntouched('platingUm') ? present.plating.thicknessUm : plating.thicknessUm,
          toleranceUm: isUntouched('platingToleranceUm') ? present.plating.toleranceUm : plating.toleranceUm,
          materialId: present.plating.materialId,
        }
      : plating,
  }
}

function makeZone(
  present: Zone | null,
  { name, facts }: SheetZone,
  freshId: string,
  layers: readonly Layer[],
  cells: readonly InZone[],
): Zone {
  const presence = layers.flatMap((layer, index) => {
    const inZone = cells[index] ?? null
    if (inZone === null) return []
    const before = present?.presence.find(({ layerId }) => layerId === layer.id) ?? makePresence(layer.id)
    return [{ ...before, ...inZone }]
  })
  const base: Zone = present ?? {
    id: freshId,
    name,
    kind: guessKind(layers, cells),
    lengthMm: null,
    widthMm: null,
    presence,
    connectorWindow: null,
    contactFinish: null,
    statedThicknessUm: null,
    statedToleranceUm: null,
    ...UNKNOWN_THROUGH_THICKNESS,
  }
  if (facts === null) return { ...base, name, presence: isSamePresence(base, presence) ? base.presence : presence }
  const { assumed: _, connectorMinUm, connectorMaxUm, ...stated } = facts
  const hasWindow = connectorMinUm !== undefined || connectorMaxUm !== undefined
  const window =
    typeof connectorMinUm === 'number' && typeof connectorMaxUm === 'number'
      ? { minUm: connectorMinUm, maxUm: connectorMaxUm }
      : null
  return { ...base, ...stated, name, presence, connectorWindow: hasWindow ? window : base.connectorWindow }
}

/** The order of a zone's layers says nothing: it stays as it was where the layers did. */
function isSamePresence({ presence }: Zone, next: Zone['presence']): boolean {
  const write = (list: Zone['presence']) =>
    JSON.stringify([...list].sort((a, b) => (a.layerId < b.layerId ? -1 : 1)).map((each) => Object.entries(each)))
  return write(presence) === write(next)
}

/** As for a zone that is added by hand, and assumed like there. */
const guessKind = (layers: readonly Layer[], cells: readonly InZone[]): Zone['kind'] =>
  layers.some((layer, index) => layer.kind === 'rigid-laminate' && (cells[index] ?? null) !== null) ? 'rigid' : 'flex'

function markZone(design: Design, present: Zone | null, { facts }: SheetZone, zone: Zone): string[] {
  const fields = ASSUMABLE_FIELDS.zones.fields.filter((field) => {
    if (facts?.assumed.includes(field) === true) return true
    if (field === 'kind' && present === null) return facts?.kind === undefined
    const isStated = facts !== null && (field === 'presence' || field in facts)
    return present !== null && !isStated && design.assumed.includes(`zones.${present.id}.${field}`)
  })
  return fields.map((field) => `zones.${zone.id}.${field}`)
}
