import { getConductorLayer, makeBendsFolds } from '../changes'
import type { ItemExample } from '../item-example'

export const rollingDirectionExamples: readonly ItemExample[] = [
  { name: 'rolled-annealed foil in folds', change: makeBendsFolds, expect: 'needs-judgment' },
  { name: 'a hinge: asked by itself', expect: 'not-applicable' },
]

export const rollingDirectionMovingExamples: readonly ItemExample[] = [
  { name: 'rolled-annealed foil in the hinge', expect: 'needs-judgment' },
  { name: 'folds alone', change: makeBendsFolds, expect: 'not-applicable' },
  {
    name: 'no rolled-annealed foil',
    change: (d) => {
      getConductorLayer(d, 'l2').materialId = 'copper-ed'
    },
    expect: 'not-applicable',
  },
]
