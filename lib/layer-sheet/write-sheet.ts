import type { Design, Layer } from '@/lib/engine'
import { convertEnteredLength, getShownUnit, type LengthUnit, withUnitInHead } from '@/lib/engine/units'
import { LAYER_COLUMN_KEYS, LAYER_COLUMNS } from './columns'
import type { LayerTable } from './layer-table'
import type { LayerRow, SheetZone } from './rows'
import { writeLayerCell } from './write-row'
import { writeZoneCell } from './zone-cell'
import { PRESENCE_ROW, writeZoneFact, ZONE_ROW_KEYS, ZONE_ROWS } from './zone-rows'

/** A layer of the design as its row. */
export function readLayerRowOf(design: Design, layer: Layer, zones: readonly SheetZone[]): LayerRow {
  const prefix = `layers.${layer.id}.`
  return {
    layer,
    assumed: design.assumed.flatMap((mark) => (mark.startsWith(prefix) ? [mark.slice(prefix.length)] : [])),
    inZones: zones.map(
      ({ id }) =>
        design.construction.zones
          .find((zone) => zone.id === id)
          ?.presence.find(({ layerId }) => layerId === layer.id) ?? null,
    ),
  }
}

/** The cells of each layer, in the order of the table's columns. */
export function writeLayerTexts(design: Design, table: LayerTable, zones: readonly SheetZone[]): string[][] {
  return design.construction.layers.map((layer) => {
    const row = readLayerRowOf(design, layer, zones)
    return table.columns.map((column) => {
      const cell = column.write(row)
      return cell === null ? '' : String(cell)
    })
  })
}

/**
 * The whole sheet for a spreadsheet: headings with their units, what is stated of the zones, the layers. Numbers have every digit, so that
 * the file gives the same design when it is read back.
 */
export function writeLayerSheet(design: Design, unit: LengthUnit): (string | number | null)[][] {
  const { layers, zones } = design.construction
  const digits = (value: number, kept: 'um' | 'mm') =>
    String(convertEnteredLength(value, kept, getShownUnit(kept, unit)))
  const head = LAYER_COLUMN_KEYS.map((key) => {
    const { title, isLength } = LAYER_COLUMNS[key]
    if (key === 'coverageFraction') return `${title}, %`
    return isLength ? withUnitInHead(title, unit) : title
  })
  const empty = LAYER_COLUMN_KEYS.slice(1).map(() => null)
  const zoneRows = ZONE_ROW_KEYS.flatMap((fact) => {
    const { title, kept } = ZONE_ROWS[fact]
    const cells = zones.map((zone) => writeZoneFact(zone, fact, design.assumed, digits))
    const first = kept === null ? title : withUnitInHead(title, getShownUnit(kept, unit))
    return cells.every((cell) => cell === '') ? [] : [[first, ...empty, ...cells.map(asCell)]]
  })
  const presence = zones.map(({ id }) =>
    design.assumed.includes(`zones.${id}.${PRESENCE_ROW.mark}`) ? '(assumed)' : null,
  )
  const presenceRows = presence.some((cell) => cell !== null) ? [[PRESENCE_ROW.title, ...empty, ...presence]] : []
  const sheetZones = zones.map(({ id, name }) => ({ id, name, facts: null }))
  const rows = layers.map((layer) => {
    const row = readLayerRowOf(design, layer, sheetZones)
    const own = LAYER_COLUMN_KEYS.map((key) => {
      const text = writeLayerCell(layer, row.assumed, key, (valueUm) => digits(valueUm, 'um'))
      return LAYER_COLUMNS[key].isNumeric && text !== null ? asCell(text) : text
    })
    return [...own, ...row.inZones.map((inZone) => asCell(writeZoneCell(inZone)))]
  })
  return [[...head, ...zones.map(({ name }) => `Zone: ${name}`)], ...zoneRows, ...presenceRows, ...rows]
}

/** A bare number is written as one, so that a spreadsheet can calculate with it. */
function asCell(text: string): string | number | null {
  if (text === '') return null
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text
}
