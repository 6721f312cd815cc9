import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const annularRingExamples: readonly ItemExample[] = [
  { name: '0.8 mm land on a 0.3 mm drill', expect: 'meets' },
  {
    name: '0.5 mm land',
    change: (d) => {
      getOnly(d.features.holes).landMm = 0.5
    },
    expect: 'fails',
  },
  {
    name: 'land open',
    change: (d) => {
      getOnly(d.features.holes).landMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'no plated hole',
    change: (d) => {
      getOnly(d.features.holes).plated = false
    },
    expect: 'not-applicable',
  },
]
