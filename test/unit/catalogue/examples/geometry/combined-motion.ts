import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const combinedMotionExamples: readonly ItemExample[] = [
  { name: 'none', expect: 'needs-judgment' },
  {
    name: 'twists',
    change: (d) => {
      Object.assign(getBend(d, 'hinge').inProduct, { furtherMotion: 'twist' })
    },
    expect: 'fails',
  },
  {
    name: 'moves where it was folded',
    change: (d) => {
      Object.assign(getBend(d, 'fold').inProduct, { furtherMotion: 'moves-after-fold' })
    },
    expect: 'fails',
  },
  {
    name: 'not stated',
    change: (d) => {
      Object.assign(getBend(d, 'hinge').inProduct, { furtherMotion: null })
    },
    expect: 'not-computed',
  },
]
