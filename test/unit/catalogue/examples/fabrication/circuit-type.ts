import type { Design } from '@/lib/engine'
import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

function withoutPlating(design: Design): void {
  for (const layer of design.construction.layers) {
    if (layer.kind === 'conductor')
      layer.plating = { process: 'none', thicknessUm: 0, toleranceUm: 0, materialId: null }
  }
  for (const { presence } of design.construction.zones) for (const each of presence) each.platedCopper = null
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
]
