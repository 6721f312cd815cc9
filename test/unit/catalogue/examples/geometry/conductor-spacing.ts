import type { ItemExample } from '../item-example'

export const conductorSpacingExamples: readonly ItemExample[] = [
  { name: 'recorded as right', expect: 'needs-judgment' },
  {
    name: 'recorded as wrong',
    change: (d) => {
      d.features.routing.evenlySpacedInBends = false
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      d.features.routing.evenlySpacedInBends = null
    },
    expect: 'not-computed',
  },
]
