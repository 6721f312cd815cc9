import { getFilm, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

export const copperEncapsulationExamples: readonly ItemExample[] = [
  { name: '24 um of adhesive on 12 um foil', expect: 'meets' },
  {
    name: '4 um of adhesive',
    change: (d) => {
      Object.assign(getFilm(d, 'cover-top-adhesive'), { thicknessUm: 4, tolerancePlusUm: 0.5, toleranceMinusUm: 0.5 })
    },
    expect: 'fails',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
