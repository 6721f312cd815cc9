import type { ItemExample } from '../item-example'

export const coverlayDetailExamples: readonly ItemExample[] = [
  { name: 'recorded as done', expect: 'needs-judgment' },
  {
    name: 'recorded as not done',
    change: (d) => {
      d.features.routing.coverlayDetailOnDrawing = false
    },
    expect: 'fails',
  },
  {
    name: 'not known',
    change: (d) => {
      d.features.routing.coverlayDetailOnDrawing = null
    },
    expect: 'not-computed',
  },
]
