import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const slitEndReliefExamples: readonly ItemExample[] = [
  { name: '1.6 mm', expect: 'meets' },
  {
    name: 'none',
    change: (d) => {
      getOnly(d.features.slits).endReliefDiameterMm = 0
    },
    expect: 'fails',
  },
  {
    name: 'no slit',
    change: (d) => {
      d.features.slits = []
      d.features.none = ['slits']
    },
    expect: 'not-applicable',
  },
  {
    name: 'none listed, and not marked as none',
    change: (d) => {
      d.features.slits = []
    },
    expect: 'not-computed',
  },
]
