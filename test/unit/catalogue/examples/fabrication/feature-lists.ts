import type { Design } from '@/lib/engine'
import type { ItemExample } from '../item-example'

/** A conductor on each layer of the example that has none listed. */
function wireAll({ construction, features }: Design): void {
  const [supply] = features.conductors
  if (supply === undefined) throw new RangeError('the example design has lost its conductor')
  for (const { id, kind } of construction.layers) {
    if (kind !== 'conductor' || features.conductors.some(({ layerId }) => layerId === id)) continue
    features.conductors.push({ ...supply, id: `wiring-${id}`, name: `Wiring of ${id}`, layerId: id, crossings: [] })
  }
}

export const featureListsExamples: readonly ItemExample[] = [
  { name: 'lists that are filled', change: wireAll, expect: 'meets' },
  {
    name: 'no slit, marked so',
    change: (d) => {
      wireAll(d)
      d.features.slits = []
      d.features.none = ['slits']
    },
    expect: 'meets',
  },
  {
    name: 'a layer with copper of which no conductor is listed',
    change: (d) => {
      wireAll(d)
      d.features.conductors = d.features.conductors.filter(({ layerId }) => layerId !== 'l1')
    },
    expect: 'not-computed',
  },
  {
    name: 'a plane carries no conductor of its own',
    change: (d) => {
      wireAll(d)
      d.features.conductors = d.features.conductors.filter(({ layerId }) => layerId !== 'l1')
      for (const layer of d.construction.layers)
        if (layer.id === 'l1' && layer.kind === 'conductor') layer.role = 'plane'
    },
    expect: 'meets',
  },
  {
    name: 'a bend that no listed conductor of its layer crosses',
    change: (d) => {
      wireAll(d)
      for (const conductor of d.features.conductors)
        conductor.crossings = conductor.crossings.filter(({ bendId }) => bendId !== 'fold')
    },
    expect: 'not-computed',
  },
  {
    name: 'a layer of which no zone has any copper needs no conductor',
    change: (d) => {
      wireAll(d)
      d.features.conductors = d.features.conductors.filter(({ layerId }) => layerId !== 'l1')
      for (const layer of d.construction.layers)
        if (layer.id === 'l1' && layer.kind === 'conductor') layer.coverageFraction = 0
      for (const { presence } of d.construction.zones)
        for (const each of presence) if (each.layerId === 'l1') each.coverageFraction = null
    },
    expect: 'meets',
  },
  {
    name: 'an empty list without a mark',
    change: (d) => {
      wireAll(d)
      d.features.slits = []
    },
    expect: 'not-computed',
  },
  {
    name: 'plated layers on a part that is said to have no hole',
    change: (d) => {
      wireAll(d)
      d.features.holes = []
      d.features.none = ['holes']
    },
    expect: 'fails',
  },
  {
    name: 'a mark beside entries',
    change: (d) => {
      wireAll(d)
      d.features.none = ['pads']
    },
    expect: 'fails',
  },
  {
    name: 'copper in a bend that nothing is said to cross',
    change: (d) => {
      for (const conductor of d.features.conductors) conductor.crossings = []
      d.features.none = ['crossings']
    },
    expect: 'fails',
  },
]
