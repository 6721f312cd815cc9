import { getConductorLayer, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const platingInBendExamples: readonly ItemExample[] = [
  { name: 'button plating', expect: 'meets' },
  {
    name: 'panel plating on the flex layer',
    change: (d) => {
      getConductorLayer(d, 'l2').plating = {
        process: 'panel',
        thicknessUm: 25,
        toleranceUm: 4,
        materialId: 'copper-plated',
      }
    },
    expect: 'fails',
  },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
