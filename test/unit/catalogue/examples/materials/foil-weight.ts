import { getConductorLayer, getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const foilWeightExamples: readonly ItemExample[] = [
  { name: '12 um for 0.4 A in 0.5 mm', expect: 'meets' },
  {
    name: 'two-ounce foil for the same current',
    change: (d) => {
      getConductorLayer(d, 'l2').thicknessUm = 68.6
    },
    expect: 'fails',
  },
  {
    name: 'current not stated',
    change: (d) => {
      getOnly(d.features.conductors).currentAmp = null
    },
    expect: 'not-computed',
  },
]
