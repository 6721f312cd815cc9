import { getConductorLayer, makeBendsFolds, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const foilTypeExamples: readonly ItemExample[] = [
  { name: 'rolled-annealed foil in the hinge', expect: 'meets' },
  {
    name: 'electrodeposited foil in the hinge',
    change: (d) => {
      getConductorLayer(d, 'l2').materialId = 'copper-ed'
    },
    expect: 'fails',
  },
  {
    name: 'electrodeposited foil that is flexed to install',
    change: (d) => {
      getConductorLayer(d, 'l2').materialId = 'copper-ed'
      for (const bend of d.bends) Object.assign(bend, { use: 'flex-to-install', requiredCycles: null })
    },
    expect: 'fails',
  },
  {
    name: 'only folds',
    change: makeBendsFolds,
    expect: 'not-applicable',
  },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
