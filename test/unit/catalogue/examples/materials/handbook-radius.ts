import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const handbookRadiusExamples: readonly ItemExample[] = [
  { name: '12 mm for a dynamic single layer', expect: 'meets' },
  {
    name: '0.5 mm for the same',
    change: (d) => {
      getBend(d, 'hinge').insideRadiusMm = 0.5
    },
    expect: 'fails',
  },
  {
    name: 'use unknown',
    change: (d) => {
      getBend(d, 'hinge').use = null
    },
    expect: 'not-computed',
  },
]
