import { getCrossing } from '../changes'
import type { ItemExample } from '../item-example'

export const widthChangeInBendExamples: readonly ItemExample[] = [
  { name: 'straight through', expect: 'needs-judgment' },
  {
    name: 'changes width in the hinge',
    change: (d) => {
      getCrossing(d, 'hinge').widthChangesInside = true
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      getCrossing(d, 'hinge').widthChangesInside = null
    },
    expect: 'not-computed',
  },
]
