import { editLayers, resize } from '../edits'
import { type Candidate, type Family, writeUm } from '../subject'
import { listFilmSteps } from './film-steps'

/** Thinner or thicker base film: between two copper layers it sets their distance, beside one it balances the cover. */
export const baseFilm: Family = ({ design, layers }) =>
  layers.flatMap(({ layer }): Candidate[] => {
    if (layer.kind !== 'base-film') return []
    return listFilmSteps(layer.thicknessUm).map((stepUm) => ({
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
