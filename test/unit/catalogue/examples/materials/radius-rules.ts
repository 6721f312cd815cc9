import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const radiusRulesExamples: readonly ItemExample[] = [
  { name: '12 mm on a thin single layer', expect: 'meets' },
  {
    name: '0.5 mm',
    change: (d) => {
      getBend(d, 'hinge').insideRadiusMm = 0.5
    },
    expect: 'fails',
  },
  {
    name: 'a table that is silent on this use',
    change: (d) => {
      d.brief.ratioTableKey = 'bend-radius-guide'
    },
    expect: 'cannot-tell',
  },
  {
    name: 'use unknown',
    change: (d) => {
      getBend(d, 'hinge').use = null
    },
    expect: 'not-computed',
  },
]
