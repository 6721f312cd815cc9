import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const stiffenerToBendExamples: readonly ItemExample[] = [
  { name: '5 mm away', expect: 'meets' },
  {
    name: 'on the edge of the bend',
    change: (d) => {
      getOnly(d.features.stiffeners).nearestBend = { bendId: 'hinge', distanceMm: 0 }
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.stiffeners).nearestBend = null
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
