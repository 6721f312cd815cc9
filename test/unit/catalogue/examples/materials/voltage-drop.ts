import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const voltageDropExamples: readonly ItemExample[] = [
  { name: '60 mm of supply', expect: 'meets' },
  {
    name: 'a hundredth of the allowance',
    change: (d) => {
      getOnly(d.features.conductors).allowedDropVolt = 0.005
    },
    expect: 'fails',
  },
  {
    name: 'length unknown',
    change: (d) => {
      getOnly(d.features.conductors).lengthMm = null
    },
    expect: 'not-computed',
  },
]
