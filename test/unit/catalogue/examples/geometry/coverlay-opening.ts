import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const coverlayOpeningExamples: readonly ItemExample[] = [
  { name: '1 mm', expect: 'meets' },
  {
    name: '0.2 mm',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).openingMm = 0.2
    },
    expect: 'fails',
  },
  {
    name: 'none listed',
    change: (d) => {
      d.features.coverlayOpenings = []
    },
    expect: 'not-computed',
  },
]
