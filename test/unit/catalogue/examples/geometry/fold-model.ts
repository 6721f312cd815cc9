import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const foldModelExamples: readonly ItemExample[] = [
  { name: 'recorded as done', expect: 'needs-judgment' },
  {
    name: 'recorded as not done',
    change: (d) => {
      getBend(d, 'hinge').triedOnModel = false
    },
    expect: 'fails',
  },
  {
    name: 'not known',
    change: (d) => {
      getBend(d, 'hinge').triedOnModel = null
    },
    expect: 'not-computed',
  },
]
