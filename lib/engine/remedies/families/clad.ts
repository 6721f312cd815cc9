import { editLayers, removeLayers } from '../edits'
import type { Family, PresentLayer } from '../subject'

const ADHESIVELESS_FILM_ID = 'pi-base-adhesiveless'

/** Adhesiveless clad: the adhesive between foil and base film goes, from the whole part, since the clad is one sheet. */
export const adhesivelessClad: Family = ({ design, layers }) => {
  const adhesives: PresentLayer[] = []
  const films = new Set<string>()
  layers.forEach((present, at) => {
    if (present.layer.kind !== 'adhesive') return
    const sides = [layers[at - 1]?.layer, layers[at + 1]?.layer]
    const film = sides.find((side) => side?.kind === 'base-film')
    if (film === undefined || !sides.some((side) => side?.kind === 'conductor')) return
    adhesives.push(present)
    films.add(film.id)
  })
  if (adhesives.length === 0) return []
  const withoutAdhesive = removeLayers(design, new Set(adhesives.map(({ layer }) => layer.id)))
  return [
    {
      id: 'adhesiveless-clad:bend',
      family: 'adhesiveless-clad',
      title: 'Adhesiveless clad',
      detail: `${adhesives.map(({ layer }) => layer.name).join(', ')} left out; base film of an adhesiveless clad`,
      cautions: [],
      forbiddenBy: [],
      edited: editLayers(withoutAdhesive, (layer) =>
        layer.kind === 'base-film' && films.has(layer.id) ? { ...layer, materialId: ADHESIVELESS_FILM_ID } : layer,
      ),
      touches: ['clad'],
    },
  ]
}
