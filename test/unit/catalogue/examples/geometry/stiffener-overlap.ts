import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const stiffenerOverlapExamples: readonly ItemExample[] = [
  { name: '1 mm', expect: 'meets' },
  {
    name: 'both end in one line',
    change: (d) => {
      getOnly(d.features.stiffeners).coverlayOverlapMm = 0
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.stiffeners).coverlayOverlapMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'none listed',
    change: (d) => {
      d.features.stiffeners = []
    },
    expect: 'not-applicable',
  },
]
