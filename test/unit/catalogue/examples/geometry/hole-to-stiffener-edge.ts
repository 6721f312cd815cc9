import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const holeToStiffenerEdgeExamples: readonly ItemExample[] = [
  {
    name: 'far from it',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'arm', stiffenerEdgeDistanceMm: 3 })
    },
    expect: 'meets',
  },
  {
    name: 'just off it',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'arm', stiffenerEdgeDistanceMm: 0.5 })
    },
    expect: 'fails',
  },
  {
    name: 'distance open',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'fingers' })
    },
    expect: 'not-computed',
  },
  {
    name: 'zone open',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: null })
    },
    expect: 'not-computed',
  },
  { name: 'in a board without a stiffener', expect: 'not-applicable' },
]
