import type { Construction, Layer } from './construction'
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

/** Layers that bond or join; what lies next to a stiffener on the side of the conductors holds it. */
const HOLDING_KINDS: ReadonlySet<string> = new Set(['adhesive', 'bondply', 'no-flow-prepreg'])

/** The layer that holds a stiffener, in the first zone that has both; null where none lies next to it. */
export function findHoldingLayer({ layers, zones }: Construction, stiffenerLayerId: string): Layer | null {
  const firstConductor = layers.findIndex(({ kind }) => kind === 'conductor')
  for (const { presence } of zones) {
    const present = new Set(presence.map(({ layerId }) => layerId))
    if (!present.has(stiffenerLayerId)) continue
    const here = layers.filter(({ id }) => present.has(id))
    const at = here.findIndex(({ id }) => id === stiffenerLayerId)
    const isAbove = layers.findIndex(({ id }) => id === stiffenerLayerId) < firstConductor
    const neighbour = here[isAbove ? at + 1 : at - 1]
    if (neighbour !== undefined && HOLDING_KINDS.has(neighbour.kind)) return neighbour
  }
  return null
}
