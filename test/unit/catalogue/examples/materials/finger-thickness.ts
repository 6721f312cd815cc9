import { getFilm, getZone } from '../changes'
import type { ItemExample } from '../item-example'

export const fingerThicknessExamples: readonly ItemExample[] = [
  { name: 'a 0.3 mm end in a 0.3 +/- 0.03 mm window', expect: 'meets' },
  {
    name: 'too thick a stiffener',
    change: (d) => {
      getFilm(d, 'stiffener').thicknessUm = 300
    },
    expect: 'fails',
  },
  {
    name: 'a loose stiffener',
    change: (d) => {
      Object.assign(getFilm(d, 'stiffener'), { tolerancePlusUm: 40, toleranceMinusUm: 40 })
    },
    expect: 'thin-margin',
  },
  {
    name: 'window unknown',
    change: (d) => {
      getZone(d, 'fingers').connectorWindow = null
    },
    expect: 'not-computed',
  },
]
