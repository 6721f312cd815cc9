import { getConductorLayer, getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const conductorWidthExamples: readonly ItemExample[] = [
  { name: '0.5 mm', expect: 'meets' },
  {
    name: '0.05 mm',
    change: (d) => {
      getOnly(d.features.conductors).widthMm = 0.05
    },
    expect: 'fails',
  },
  {
    name: '0.09 mm in 11.5 um of copper',
    change: (d) => {
      getOnly(d.features.conductors).widthMm = 0.09
    },
    expect: 'meets',
  },
  {
    name: '0.12 mm in two-ounce foil',
    change: (d) => {
      getOnly(d.features.conductors).widthMm = 0.12
      getConductorLayer(d, 'l2').thicknessUm = 68.6
    },
    expect: 'fails',
  },
  {
    name: 'none listed',
    change: (d) => {
      d.features.conductors = []
    },
    expect: 'not-computed',
  },
]
