import type { Design } from './design'
import type { Features } from './features'

type StiffenerFeature = Features['stiffeners'][number]

/**
 * Every stiffener of the part. The construction says which there are: a stiffener layer of which no detail has been typed
 * yet is one whose details are not known, and not one less.
 */
export function listStiffeners({
  construction,
  features,
}: Pick<Design, 'construction' | 'features'>): StiffenerFeature[] {
  const described = new Set(features.stiffeners.map(({ layerId }) => layerId))
  const bare = construction.layers.filter(({ id, kind }) => kind === 'stiffener' && !described.has(id))
  return [
    ...features.stiffeners,
    ...bare.map(({ id, name }) => ({
      id,
      name,
      layerId: id,
      purpose: null,
      coverlayOverlapMm: null,
      bonded: null,
      heatRatingDegC: null,
      nearestBend: null,
      onDrawing: null,
    })),
  ]
}
