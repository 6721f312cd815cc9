import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const padAnchorsExamples: readonly ItemExample[] = [
  { name: 'two spurs', expect: 'meets' },
  {
    name: 'none',
    change: (d) => {
      getOnly(d.features.pads).anchorCount = 0
    },
    expect: 'fails',
  },
  {
    name: 'not counted',
    change: (d) => {
      getOnly(d.features.pads).anchorCount = null
    },
    expect: 'not-computed',
  },
  {
    name: 'a plated hole in the pad',
    change: (d) => {
      getOnly(d.features.pads).hasPlatedHole = true
    },
    expect: 'not-applicable',
  },
]
