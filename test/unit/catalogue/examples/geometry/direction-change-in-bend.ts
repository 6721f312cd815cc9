import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const directionChangeInBendExamples: readonly ItemExample[] = [
  { name: 'straight through', expect: 'needs-judgment' },
  {
    name: 'changes direction in the hinge',
    change: (d) => {
      getOnly(getOnly(d.features.conductors).crossings).directionChangesInside = true
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      getOnly(getOnly(d.features.conductors).crossings).directionChangesInside = null
    },
    expect: 'not-computed',
  },
]
