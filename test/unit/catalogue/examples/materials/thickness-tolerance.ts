import type { Design } from '@/lib/engine'
import { getFilm, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

const withoutTolerances = (d: Design) => {
  for (const zone of d.construction.zones) zone.statedToleranceUm = null
}

export const thicknessToleranceExamples: readonly ItemExample[] = [
  { name: 'ordinary films', expect: 'meets' },
  { name: 'ordinary films, no tolerance on the drawing', change: withoutTolerances, expect: 'meets' },
  {
    name: 'a tolerance on the drawing that ordinary films do not hold',
    change: (d) => {
      for (const zone of d.construction.zones) zone.statedToleranceUm = 1
    },
    expect: 'fails',
  },
  {
    name: 'adhesive of 100 +/- 60 um in the arm',
    change: (d) => {
      withoutTolerances(d)
      Object.assign(getFilm(d, 'cover-top-adhesive'), { thicknessUm: 100, tolerancePlusUm: 60, toleranceMinusUm: 60 })
    },
    expect: 'fails',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
