import type { Design } from '@/lib/engine'
import { getConductorLayer, getOnly } from '../changes'
import type { ItemExample } from '../item-example'

function withoutPlating(design: Design): void {
  for (const layer of design.construction.layers) {
    if (layer.kind === 'conductor') Object.assign(layer, { plating: { ...layer.plating, process: 'none' } })
  }
  for (const hole of design.features.holes) hole.plated = false
}

export const circuitTypeExamples: readonly ItemExample[] = [
  { name: 'type 4 for a rigid-flex part', expect: 'meets' },
  {
    name: 'type 1 for the same',
    change: (d) => {
      d.brief.circuitType = 'type-1'
    },
    expect: 'fails',
  },
  {
    name: 'not stated',
    change: (d) => {
      d.brief.circuitType = null
    },
    expect: 'not-computed',
  },
  {
    name: 'type 5 where no hole and no layer is plated',
    change: (d) => {
      withoutPlating(d)
      d.brief.circuitType = 'type-5'
    },
    expect: 'meets',
  },
  {
    name: 'type 5 where one hole of two is plated',
    change: (d) => {
      withoutPlating(d)
      d.brief.circuitType = 'type-5'
      const via = getOnly(d.features.holes)
      d.features.holes.push({ ...via, id: 'plated', name: 'Plated', plated: true })
    },
    expect: 'fails',
  },
  {
    name: 'type 5 where layers are plated and the hole is not',
    change: (d) => {
      d.brief.circuitType = 'type-5'
      getOnly(d.features.holes).plated = false
    },
    expect: 'fails',
  },
  {
    name: 'type 1 for one layer on film',
    change: (d) => {
      d.brief.circuitType = 'type-1'
      d.construction.layers = d.construction.layers.filter(({ kind, id }) => kind !== 'conductor' || id === 'l2')
      for (const zone of d.construction.zones) Object.assign(zone, { kind: 'flex' })
    },
    expect: 'meets',
  },
  {
    name: 'type 5 where one layer of three is plated',
    change: (d) => {
      withoutPlating(d)
      d.brief.circuitType = 'type-5'
      const plated = getConductorLayer(d, 'l2')
      Object.assign(plated, { plating: { ...plated.plating, process: 'panel' } })
    },
    expect: 'fails',
  },
  {
    name: 'type 1 for one layer with a board',
    change: (d) => {
      d.brief.circuitType = 'type-1'
      d.construction.layers = d.construction.layers.filter(({ kind, id }) => kind !== 'conductor' || id === 'l2')
    },
    expect: 'fails',
  },
]
