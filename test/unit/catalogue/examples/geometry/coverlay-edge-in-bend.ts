import type { ItemExample } from '../item-example'

export const coverlayEdgeInBendExamples: readonly ItemExample[] = [
  { name: 'recorded as right', expect: 'needs-judgment' },
  {
    name: 'recorded as wrong',
    change: (d) => {
      d.features.routing.coverlayEdgeInsideBend = true
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      d.features.routing.coverlayEdgeInsideBend = null
    },
    expect: 'not-computed',
  },
]
