import { getConductorLayer } from '../changes'
import type { ItemExample } from '../item-example'

export const planeInBendExamples: readonly ItemExample[] = [
  {
    name: 'hatched',
    change: (d) => {
      Object.assign(getConductorLayer(d, 'l2'), { role: 'plane', planePattern: 'hatched' })
    },
    expect: 'meets',
  },
  {
    name: 'solid',
    change: (d) => {
      Object.assign(getConductorLayer(d, 'l2'), { role: 'plane', planePattern: 'solid' })
    },
    expect: 'fails',
  },
  {
    name: 'pattern open',
    change: (d) => {
      getConductorLayer(d, 'l2').role = 'plane'
    },
    expect: 'not-computed',
  },
  { name: 'signals only', expect: 'not-applicable' },
]
