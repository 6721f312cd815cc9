import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const conductorSpaceExamples: readonly ItemExample[] = [
  { name: '0.2 mm', expect: 'meets' },
  {
    name: '0.05 mm',
    change: (d) => {
      getOnly(d.features.conductors).spaceMm = 0.05
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.conductors).spaceMm = null
    },
    expect: 'not-computed',
  },
]
