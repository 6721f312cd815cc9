import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const flexTestTermsExamples: readonly ItemExample[] = [
  { name: 'all stated', expect: 'meets' },
  {
    name: 'a mandrel wider than the bend',
    change: (d) => {
      getBend(d, 'hinge').flexTest.mandrelDiameterMm = 40
    },
    expect: 'fails',
  },
  {
    name: 'travel open',
    change: (d) => {
      getBend(d, 'hinge').flexTest.travelMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'nowhere held',
    change: (d) => {
      getBend(d, 'rocker').flexTest.pointsOfApplication = ' '
    },
    expect: 'not-computed',
  },
]
