import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const holeToBendExamples: readonly ItemExample[] = [
  { name: '8 mm away', expect: 'meets' },
  {
    name: 'on the edge of the bend',
    change: (d) => {
      getOnly(d.features.holes).nearestBend = { bendId: 'hinge', distanceMm: 0 }
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.holes).nearestBend = null
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
