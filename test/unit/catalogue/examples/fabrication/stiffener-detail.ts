import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const stiffenerDetailExamples: readonly ItemExample[] = [
  { name: 'on the drawing', expect: 'needs-judgment' },
  {
    name: 'missing',
    change: (d) => {
      getOnly(d.features.stiffeners).onDrawing = false
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      getOnly(d.features.stiffeners).onDrawing = null
    },
    expect: 'not-computed',
  },
]
