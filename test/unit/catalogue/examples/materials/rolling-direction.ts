import { getConductorLayer } from '../changes'
import type { ItemExample } from '../item-example'

export const rollingDirectionExamples: readonly ItemExample[] = [
  { name: 'rolled-annealed foil in the hinge', expect: 'needs-judgment' },
  {
    name: 'no rolled-annealed foil',
    change: (d) => {
      getConductorLayer(d, 'l2').materialId = 'copper-ed'
    },
    expect: 'not-applicable',
  },
]
