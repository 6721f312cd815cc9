import type { ConstructionFamily } from '../construction-family'
import type { MatrixRow } from './row'

/** What the conditions of a row are held against. */
export interface Circumstances {
  readonly layerCount: number
  readonly family: ConstructionFamily | null
  /** Foil of the layer that the value lies on; null where it lies on none. */
  readonly foilUm: number | null
}

/** Foil is bought by weight, and its thickness is written with or without the decimal: 17, 17.1 and 17.15 um are one foil. */
const FOIL_TOLERANCE_UM = 0.25

/** Do the row's conditions hold? A condition on foil never holds for a value that lies on no conductor layer. */
export function matchesConditions(row: MatrixRow, { layerCount, family, foilUm }: Circumstances): boolean {
  if (row.layersFrom !== null && layerCount < row.layersFrom) return false
  if (row.layersTo !== null && layerCount > row.layersTo) return false
  if (row.construction !== null && row.construction !== family) return false
  if (row.foilFromUm === null && row.foilToUm === null) return true
  if (foilUm === null) return false
  if (row.foilFromUm !== null && foilUm < row.foilFromUm - FOIL_TOLERANCE_UM) return false
  return row.foilToUm === null || foilUm <= row.foilToUm + FOIL_TOLERANCE_UM
}

/** How many of the three conditions (layers, foil, construction) a row states. */
export function countConditions(row: MatrixRow): number {
  const layers = row.layersFrom !== null || row.layersTo !== null
  const foil = row.foilFromUm !== null || row.foilToUm !== null
  return Number(layers) + Number(foil) + Number(row.construction !== null)
}

/**
 * The rows that decide: of those whose conditions hold, the ones that state the most conditions. Several may be left; the
 * strictest verdict among them counts.
 */
export function findDecidingRows<R extends MatrixRow>(rows: readonly R[], circumstances: Circumstances): R[] {
  const holding = rows.filter((row) => matchesConditions(row, circumstances))
  const most = Math.max(...holding.map(countConditions))
  return holding.filter((row) => countConditions(row) === most)
}
