import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const viaStructureExamples: readonly ItemExample[] = [
  { name: 'through the board', expect: 'meets' },
  {
    name: 'span open',
    change: (d) => {
      getOnly(d.features.holes).toLayerId = null
    },
    expect: 'not-computed',
  },
  {
    name: 'both ends on one layer',
    change: (d) => {
      getOnly(d.features.holes).toLayerId = 'l1'
    },
    expect: 'fails',
  },
  {
    name: 'a layer that the zone has not',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'arm' })
    },
    expect: 'fails',
  },
  {
    name: 'filling open',
    change: (d) => {
      getOnly(d.features.holes).filling = null
    },
    expect: 'not-computed',
  },
]
