import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const openingToBendExamples: readonly ItemExample[] = [
  { name: '6 mm away', expect: 'meets' },
  {
    name: 'on the edge of the bend',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).nearestBend = { bendId: 'hinge', distanceMm: 0 }
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).nearestBend = null
    },
    expect: 'not-computed',
  },
  {
    name: 'none listed',
    change: (d) => {
      d.features.coverlayOpenings = []
    },
    expect: 'not-computed',
  },
]
