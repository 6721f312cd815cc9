import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const freeLengthExamples: readonly ItemExample[] = [
  { name: 'tied down', expect: 'needs-judgment' },
  {
    name: 'a fold hangs free',
    change: (d) => {
      Object.assign(getBend(d, 'fold').inProduct, { isTiedDown: false })
    },
    expect: 'fails',
  },
  {
    name: 'a dynamic bend need not be',
    change: (d) => {
      Object.assign(getBend(d, 'hinge').inProduct, { isTiedDown: false })
    },
    expect: 'needs-judgment',
  },
  {
    name: 'not stated',
    change: (d) => {
      Object.assign(getBend(d, 'fold').inProduct, { isTiedDown: null })
    },
    expect: 'not-computed',
  },
]
