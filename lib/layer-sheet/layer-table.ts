import {
  type Design,
  LAYER_FIELDS,
  LAYER_KIND_FACTS,
  LAYER_KINDS,
  listLibraryMaterials,
  type Material,
} from '@/lib/engine'
import { digitsOfEnteredLength, getUnitSymbol, type LengthUnit } from '@/lib/engine/units'
import type { FabricationTable, TableColumn } from '@/lib/fabrication/table'
import { LAYER_COLUMN_KEYS, LAYER_COLUMNS, type LayerColumn, nameZoneColumn, PLATING_NAMES } from './columns'
import { readLayerRow } from './read-row'
import type { LayerRow, SheetZone } from './rows'
import { writeLayerCell, writeZoneOfRow } from './write-row'

/** A layer sheet's grid: its columns depend on the design's zones and on the unit that the reader chose. */
export type LayerTable = FabricationTable<LayerRow>

/**
 * @param unit  of lengths that carry none, and in which they are written
 * @param offered  materials that a layer may be made of beside the design's own and the library's
 */
export function makeLayerTable(
  design: Design,
  zones: readonly SheetZone[],
  unit: LengthUnit,
  offered: readonly Material[] = [],
): LayerTable {
  const choices: Partial<Record<LayerColumn, readonly string[]>> = {
    kind: LAYER_KINDS.map((kind) => LAYER_KIND_FACTS[kind].name),
    materialId: [...new Set([...design.materials, ...listLibraryMaterials(), ...offered].map(({ id }) => id))],
    role: Object.values(LAYER_FIELDS.role.choices),
    planePattern: Object.values(LAYER_FIELDS.planePattern.choices),
    plating: Object.values(PLATING_NAMES),
  }
  const own = LAYER_COLUMN_KEYS.map((key): TableColumn<LayerRow> => {
    const { title, isLength, isNumeric, isRequired, widthRem } = LAYER_COLUMNS[key]
    return {
      key,
      title,
      hint: isLength ? getUnitSymbol(unit) : key === 'coverageFraction' ? '%' : '',
      isNumeric,
      choices: choices[key] ?? [],
      isRequired,
      widthRem,
      unit: null,
      read: (text) => ({ ok: true, value: text }),
      write: ({ layer, assumed }) =>
        writeLayerCell(layer, assumed, key, (valueUm) => digitsOfEnteredLength(valueUm, 'um', unit)),
    }
  })
  const ofZones = zones.map(
    ({ name }, at): TableColumn<LayerRow> => ({
      key: nameZoneColumn(at),
      title: name,
      hint: 'zone: x, or % of copper',
      isNumeric: false,
      choices: [],
      isRequired: false,
      widthRem: 6,
      unit: null,
      read: (text) => ({ ok: true, value: text }),
      write: (row) => writeZoneOfRow(row, at),
    }),
  )
  return {
    columns: [...own, ...ofZones],
    readRow: (fields) =>
      readLayerRow({ design, offered }, fields as Readonly<Record<string, string>>, zones.length, unit),
    findProblemsAcross: () => [],
    keyOf: ({ layer }) => layer.name,
  }
}
