import { getBend, makeBendsFolds } from '../changes'
import type { ItemExample } from '../item-example'

export const fatigueLifeExamples: readonly ItemExample[] = [
  { name: '100,000 cycles near the neutral axis', expect: 'meets' },
  {
    name: 'the hinge at 0.5 mm',
    change: (d) => {
      getBend(d, 'hinge').insideRadiusMm = 0.5
    },
    expect: 'fails',
  },
  {
    name: 'cycles not stated',
    change: (d) => {
      getBend(d, 'hinge').requiredCycles = null
    },
    expect: 'not-computed',
  },
  {
    name: 'only folds',
    change: makeBendsFolds,
    expect: 'not-applicable',
  },
]
