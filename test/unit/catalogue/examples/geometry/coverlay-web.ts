import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const coverlayWebExamples: readonly ItemExample[] = [
  { name: '0.5 mm', expect: 'meets' },
  {
    name: '0.1 mm',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).webMm = 0.1
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).webMm = null
    },
    expect: 'not-computed',
  },
]
