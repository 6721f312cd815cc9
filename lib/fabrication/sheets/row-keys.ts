import type { MatrixRow } from '../matrix/row'
import type { ShelfRow } from '../shelf/row'

/** What a row of the matrix is about: a parameter, under conditions. */
export function matrixRowKey(row: MatrixRow): string {
  return JSON.stringify([row.parameter, row.layersFrom, row.layersTo, row.foilFromUm, row.foilToUm, row.construction])
}

/** What a row of the shelf is about: one material as it is bought. */
export function shelfRowKey(row: ShelfRow): string {
  const { material, thicknessUm, foil, foilUm, foilSides, adhesive, adhesiveUm, form, widthMm } = row
  return JSON.stringify([material, thicknessUm, foil, foilUm, foilSides, adhesive, adhesiveUm, form, widthMm])
}
