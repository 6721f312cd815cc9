import {
  type Design,
  findMaterial,
  getChoiceWord,
  LAYER_FIELDS,
  type LengthUnit,
  nameLayerKind,
  type ZoneResult,
} from '@/lib/engine'
import { asDeviation, digitsOfEnteredLength, digitsOfLength, getUnitSymbol } from '@/lib/engine/units'
import { formatDesignation, nameConductorLayers } from './layer-designations'
import type { PictureTable } from './picture'

/**
 * The layer table of the drawing sheet: every layer from the top face down, its call-out, thickness and tolerance, and
 * its finished thickness in each zone (a dash where it is absent). Generated, so that it cannot disagree with the design.
 */
export function listLayerTable(design: Design, zones: readonly ZoneResult[], unit: LengthUnit): PictureTable {
  const designations = nameConductorLayers(design.construction)
  const stated = (valueUm: number) => digitsOfEnteredLength(valueUm, 'um', unit)
  const finished = zones.map((zone) => new Map(zone.layers.map((layer) => [layer.layerId, layer.nominalUm] as const)))
  const unitLabel = getUnitSymbol(unit)
  return {
    caption: 'Layers, top face first',
    columns: [
      { key: 'position', label: 'No.', numeric: true },
      { key: 'designation', label: 'Conductor layer', numeric: false },
      { key: 'name', label: 'Name', numeric: false },
      { key: 'kind', label: 'Kind', numeric: false },
      { key: 'material', label: 'Material', numeric: false },
      { key: 'specification', label: 'Specification', numeric: false },
      { key: 'thickness', label: `As bought, ${unitLabel}`, numeric: true },
      { key: 'tolerance', label: `Tolerance, ${unitLabel}`, numeric: true },
      { key: 'plating', label: 'Plating', numeric: false },
      ...zones.map((zone) => ({ key: `zone-${zone.zoneId}`, label: `${zone.name}, ${unitLabel}`, numeric: true })),
    ],
    rows: design.construction.layers.map((layer, index) => {
      const designation = designations.get(layer.id)
      const material = layer.kind === 'unbonded-gap' ? null : findMaterial(design, layer.materialId)
      const row: Record<string, string> = {
        position: String(index + 1),
        designation: designation === undefined ? '' : formatDesignation(designation),
        name: layer.name,
        kind: nameLayerKind(layer.kind),
        material: material?.name ?? (layer.kind === 'unbonded-gap' ? 'air' : layer.materialId),
        specification: material?.specification ?? '',
        thickness: stated(layer.thicknessUm),
        tolerance:
          layer.kind === 'unbonded-gap' ? '' : formatTolerance(layer.tolerancePlusUm, layer.toleranceMinusUm, stated),
        plating:
          layer.kind === 'conductor'
            ? layer.plating.process === 'none'
              ? 'none'
              : `${getChoiceWord(LAYER_FIELDS.plating.fields.process, layer.plating.process)} +${stated(layer.plating.thicknessUm)}`
            : '',
      }
      zones.forEach((zone, at) => {
        const thicknessUm = finished[at]?.get(layer.id)
        row[`zone-${zone.zoneId}`] = thicknessUm === undefined ? '–' : digitsOfLength(thicknessUm, unit)
      })
      return row
    }),
  }
}

/** `±8`, or `+8 −5` where the sides differ; digits by `stated`. */
export function formatTolerance(plusUm: number, minusUm: number, stated: (valueUm: number) => string): string {
  return asDeviation(stated(plusUm), stated(minusUm))
}
