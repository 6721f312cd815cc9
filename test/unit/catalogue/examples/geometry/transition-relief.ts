import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const transitionReliefExamples: readonly ItemExample[] = [
  { name: 'recorded as done', expect: 'needs-judgment' },
  {
    name: 'recorded as not done',
    change: (d) => {
      getBend(d, 'hinge').strainReliefAtTransition = false
    },
    expect: 'fails',
  },
  {
    name: 'not known',
    change: (d) => {
      getBend(d, 'hinge').strainReliefAtTransition = null
    },
    expect: 'not-computed',
  },
]
