import { getBend, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const copperYieldExamples: readonly ItemExample[] = [
  {
    name: 'conductor near the neutral axis at 25 mm',
    change: (d) => {
      for (const id of ['hinge', 'rocker']) getBend(d, id).insideRadiusMm = 25
    },
    expect: 'meets',
  },
  {
    name: 'the hinge at 2 mm',
    change: (d) => {
      getBend(d, 'hinge').insideRadiusMm = 2
    },
    expect: 'fails',
  },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
