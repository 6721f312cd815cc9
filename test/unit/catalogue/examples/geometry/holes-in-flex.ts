import { getOnly, makeBendsFolds } from '../changes'
import type { ItemExample } from '../item-example'

export const holesInFlexExamples: readonly ItemExample[] = [
  { name: 'in the board', expect: 'meets' },
  {
    name: 'in film that moves',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'arm' })
    },
    expect: 'fails',
  },
  {
    name: 'in film that stands',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'arm', nearestBend: { bendId: 'fold', distanceMm: 4 } })
      makeBendsFolds(d)
    },
    expect: 'needs-judgment',
  },
  {
    name: 'in film that stands, near the fold',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'arm', nearestBend: { bendId: 'fold', distanceMm: 0.5 } })
      makeBendsFolds(d)
    },
    expect: 'cannot-tell',
  },
  {
    name: 'in film that stands, and nobody said how far from the fold',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'arm', nearestBend: null, clearOfBends: null })
      makeBendsFolds(d)
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
  {
    name: 'not plated',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'arm', plated: false, wallPlatingUm: null })
    },
    expect: 'not-applicable',
  },
]
