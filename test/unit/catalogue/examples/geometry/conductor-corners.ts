import type { ItemExample } from '../item-example'

export const conductorCornersExamples: readonly ItemExample[] = [
  { name: 'recorded as right', expect: 'needs-judgment' },
  {
    name: 'recorded as wrong',
    change: (d) => {
      d.features.routing.cornersCurved = false
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      d.features.routing.cornersCurved = null
    },
    expect: 'not-computed',
  },
]
