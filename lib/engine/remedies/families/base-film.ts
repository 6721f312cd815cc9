import { editLayers, resize } from '../edits'
import { type Candidate, type Family, writeUm } from '../subject'

/** Films that flexible clads are ordinarily made with, um. Common practice, no published source. */
const FILM_STEPS_UM = [12.5, 25, 50, 75, 125] as const
/** Sheets of the same nominal thickness differ by less than this between makers' lists. */
const SAME_SHEET_UM = 2
/** Thicker films than the next two stiffen the bend more than they help. */
const FILM_STEPS_UP = 2

/** Thinner or thicker base film: between two copper layers it sets their distance, beside one it balances the cover. */
export const baseFilm: Family = ({ design, layers }) =>
  layers.flatMap(({ layer }): Candidate[] => {
    if (layer.kind !== 'base-film') return []
    const thinner = FILM_STEPS_UM.filter((stepUm) => stepUm < layer.thicknessUm - SAME_SHEET_UM)
    const thicker = FILM_STEPS_UM.filter((stepUm) => stepUm > layer.thicknessUm + SAME_SHEET_UM)
    return [...thinner, ...thicker.slice(0, FILM_STEPS_UP)].map((stepUm) => ({
      id: `base-film:${layer.id}-${stepUm}`,
      family: 'base-film',
      title: stepUm < layer.thicknessUm ? 'Thinner base film' : 'Thicker base film',
      detail: `${layer.name}: ${writeUm(layer.thicknessUm)} to ${writeUm(stepUm)}`,
      cautions: ['The base film is part of the clad: ask which thicknesses it is sold in with this foil.'],
      forbiddenBy: [],
      edited: editLayers(design, (each) => (each.id === layer.id ? resize(layer, stepUm) : each)),
      touches: [`base-film-${layer.id}`],
    }))
  })
