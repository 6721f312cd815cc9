import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const conductorWidthExamples: readonly ItemExample[] = [
  { name: '0.5 mm', expect: 'meets' },
  {
    name: '0.05 mm',
    change: (d) => {
      getOnly(d.features.conductors).widthMm = 0.05
    },
    expect: 'fails',
  },
  {
    name: 'none listed',
    change: (d) => {
      d.features.conductors = []
    },
    expect: 'not-computed',
  },
]
