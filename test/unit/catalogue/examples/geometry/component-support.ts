import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const componentSupportExamples: readonly ItemExample[] = [
  { name: 'supported', expect: 'needs-judgment' },
  {
    name: 'on bare film',
    change: (d) => {
      getOnly(d.features.components).overStiffener = false
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      getOnly(d.features.components).overStiffener = null
    },
    expect: 'not-computed',
  },
]
