import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const bendStrainExamples: readonly ItemExample[] = [
  { name: 'one layer near the neutral axis at 12 mm', expect: 'meets' },
  {
    name: 'the hinge at 0.5 mm',
    change: (d) => {
      Object.assign(getBend(d, 'hinge'), { insideRadiusMm: 0.5, radiusToleranceMm: 0.05 })
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
