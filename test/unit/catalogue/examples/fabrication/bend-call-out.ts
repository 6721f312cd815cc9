import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const bendCallOutExamples: readonly ItemExample[] = [
  { name: 'called out', expect: 'needs-judgment' },
  {
    name: 'not on the drawing',
    change: (d) => {
      d.features.routing.bendsCalledOutOnDrawing = false
    },
    expect: 'fails',
  },
  {
    name: 'cycles open',
    change: (d) => {
      getBend(d, 'hinge').requiredCycles = null
    },
    expect: 'not-computed',
  },
]
