import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const widthChangeInBendExamples: readonly ItemExample[] = [
  { name: 'straight through', expect: 'needs-judgment' },
  {
    name: 'changes width in the hinge',
    change: (d) => {
      getOnly(getOnly(d.features.conductors).crossings).widthChangesInside = true
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      getOnly(getOnly(d.features.conductors).crossings).widthChangesInside = null
    },
    expect: 'not-computed',
  },
]
