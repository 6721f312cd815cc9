import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const componentToTransitionExamples: readonly ItemExample[] = [
  { name: '3 mm', expect: 'meets' },
  {
    name: '0.5 mm',
    change: (d) => {
      getOnly(d.features.components).transitionDistanceMm = 0.5
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.components).transitionDistanceMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'none listed',
    change: (d) => {
      d.features.components = []
    },
    expect: 'not-computed',
  },
]
