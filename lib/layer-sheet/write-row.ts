import { LAYER_FIELDS, type Layer } from '@/lib/engine'
import { withAssumed, writeShare } from './cells'
import { type LayerColumn, PLATING_NAMES } from './columns'
import type { LayerRow } from './rows'
import { writeZoneCell } from './zone-cell'

/** Fields that carry a mark, by column where the two differ. */
const MARKS: Partial<Record<LayerColumn, string>> = {
  thicknessUm: 'thicknessUm',
  tolerancePlusUm: 'tolerancePlusUm',
  toleranceMinusUm: 'toleranceMinusUm',
  materialId: 'materialId',
  coverageFraction: 'coverageFraction',
  plating: 'plating',
  processingLossUm: 'processingLossUm',
}

/** The text of a layer's cell. @param digits  how a length in um is written */
export function writeLayerCell(
  layer: Layer,
  assumed: readonly string[],
  column: LayerColumn,
  digits: (valueUm: number) => string,
): string | null {
  const text = writeText(layer, column, digits)
  const mark = MARKS[column]
  return text === null ? null : withAssumed(text, mark !== undefined && assumed.includes(mark))
}

function writeText(layer: Layer, column: LayerColumn, length: (valueUm: number) => string): string | null {
  if (column === 'name') return layer.name
  if (column === 'kind') return LAYER_FIELDS.kind.choices[layer.kind]
  if (column === 'thicknessUm') return length(layer.thicknessUm)
  if (layer.kind === 'unbonded-gap') return null
  if (column === 'materialId') return layer.materialId
  if (column === 'tolerancePlusUm' || column === 'toleranceMinusUm') return length(layer[column])
  if (layer.kind !== 'conductor') return null
  const { plating } = layer
  switch (column) {
    case 'role':
      return LAYER_FIELDS.role.choices[layer.role]
    case 'planePattern':
      return layer.planePattern === null ? null : LAYER_FIELDS.planePattern.choices[layer.planePattern]
    case 'coverageFraction':
      return writeShare(layer.coverageFraction)
    case 'plating':
      return PLATING_NAMES[plating.process]
    case 'platingUm':
      return plating.process === 'none' ? null : length(plating.thicknessUm)
    case 'platingToleranceUm':
      return plating.process === 'none' ? null : length(plating.toleranceUm)
    case 'processingLossUm':
      return length(layer.processingLossUm)
  }
}

export const writeZoneOfRow = ({ inZones }: LayerRow, at: number): string => writeZoneCell(inZones[at] ?? null)
