import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const tearStopExamples: readonly ItemExample[] = [
  { name: 'tear stop drawn', expect: 'needs-judgment' },
  {
    name: 'none',
    change: (d) => {
      getOnly(d.features.outlineCorners).tearStop = false
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      getOnly(d.features.outlineCorners).tearStop = null
    },
    expect: 'not-computed',
  },
]
