import { getConductorLayer, getFilm, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

export const coverlayAdhesiveExamples: readonly ItemExample[] = [
  { name: '25 um over 12 um foil', expect: 'meets' },
  {
    name: '12 um over plated foil in the board',
    change: (d) => {
      getConductorLayer(d, 'l2').plating = {
        process: 'panel',
        thicknessUm: 20,
        toleranceUm: 4,
        materialId: 'copper-plated',
      }
      Object.assign(getFilm(d, 'cover-top-adhesive'), { thicknessUm: 12, tolerancePlusUm: 1, toleranceMinusUm: 1 })
    },
    expect: 'fails',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
