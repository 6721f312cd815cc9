import { getFilm } from '../changes'
import type { ItemExample } from '../item-example'

export const thicknessToleranceExamples: readonly ItemExample[] = [
  { name: 'ordinary films', expect: 'meets' },
  {
    name: 'adhesive of 100 +/- 60 um in the arm',
    change: (d) => {
      Object.assign(getFilm(d, 'cover-top-adhesive'), { thicknessUm: 100, tolerancePlusUm: 60, toleranceMinusUm: 60 })
    },
    expect: 'fails',
  },
]
