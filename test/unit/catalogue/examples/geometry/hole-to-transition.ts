import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const holeToTransitionExamples: readonly ItemExample[] = [
  { name: '2 mm', expect: 'meets' },
  {
    name: '0.5 mm',
    change: (d) => {
      getOnly(d.features.holes).transitionDistanceMm = 0.5
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.holes).transitionDistanceMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'none listed',
    change: (d) => {
      d.features.holes = []
    },
    expect: 'not-computed',
  },
]
