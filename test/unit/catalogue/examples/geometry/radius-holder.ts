import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const radiusHolderExamples: readonly ItemExample[] = [
  { name: 'formers, a person still judges them', expect: 'needs-judgment' },
  {
    name: 'nothing holds the fold',
    change: (d) => {
      getBend(d, 'fold').radiusHeldBy = 'nothing'
    },
    expect: 'fails',
  },
  {
    name: 'not known',
    change: (d) => {
      getBend(d, 'fold').radiusHeldBy = null
    },
    expect: 'not-computed',
  },
]
