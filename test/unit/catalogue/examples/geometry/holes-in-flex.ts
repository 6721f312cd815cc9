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
      Object.assign(getOnly(d.features.holes), { zoneId: 'arm' })
      makeBendsFolds(d)
    },
    expect: 'cannot-tell',
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
