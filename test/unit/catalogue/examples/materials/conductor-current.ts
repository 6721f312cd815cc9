import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const conductorCurrentExamples: readonly ItemExample[] = [
  { name: '0.4 A in 0.5 mm of foil', expect: 'meets' },
  {
    name: 'ten times the current',
    change: (d) => {
      getOnly(d.features.conductors).currentAmp = 8
    },
    expect: 'fails',
  },
  {
    name: 'rise not stated',
    change: (d) => {
      getOnly(d.features.conductors).allowedRiseDegC = null
    },
    expect: 'not-computed',
  },
]
