import { getCrossing } from '../changes'
import type { ItemExample } from '../item-example'

export const directionChangeInBendExamples: readonly ItemExample[] = [
  { name: 'straight through', expect: 'needs-judgment' },
  {
    name: 'changes direction in the hinge',
    change: (d) => {
      getCrossing(d, 'hinge').directionChangesInside = true
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      getCrossing(d, 'hinge').directionChangesInside = null
    },
    expect: 'not-computed',
  },
]
