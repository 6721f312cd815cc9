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
  {
    name: 'what holds one way, and its return is as long',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), { allowedDropVolt: 0.15, returnAsLong: true })
    },
    expect: 'fails',
  },
  {
    name: 'what holds one way, and its return is short',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), { allowedDropVolt: 0.15, returnAsLong: false })
    },
    expect: 'meets',
  },
  {
    name: 'what holds one way, and nobody said how it returns',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), { allowedDropVolt: 0.15, returnAsLong: null })
    },
    expect: 'not-computed',
  },
]
