import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const tightBendCutOutsExamples: readonly ItemExample[] = [
  {
    name: 'a tight fold, considered',
    change: (d) => {
      getBend(d, 'fold').insideRadiusMm = 0.5
    },
    expect: 'needs-judgment',
  },
  {
    name: 'a tight fold, not considered',
    change: (d) => {
      getBend(d, 'fold').insideRadiusMm = 0.5
      d.features.routing.cutOutsConsideredAtTightBends = false
    },
    expect: 'fails',
  },
  { name: 'no tight bend', expect: 'not-applicable' },
]
