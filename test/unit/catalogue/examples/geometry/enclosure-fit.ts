import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const enclosureFitExamples: readonly ItemExample[] = [
  { name: 'followed', expect: 'needs-judgment' },
  {
    name: 'not followed',
    change: (d) => {
      Object.assign(getBend(d, 'hinge').inProduct, { followedInEnclosure: false })
    },
    expect: 'fails',
  },
  {
    name: 'not stated',
    change: (d) => {
      Object.assign(getBend(d, 'hinge').inProduct, { followedInEnclosure: null })
    },
    expect: 'not-computed',
  },
]
