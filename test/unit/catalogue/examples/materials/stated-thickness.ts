import { getZone, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

export const statedThicknessExamples: readonly ItemExample[] = [
  {
    name: 'the arm as it adds up',
    change: (d) => {
      getZone(d, 'arm').statedThicknessUm = 69.4
    },
    expect: 'meets',
  },
  {
    name: 'the arm stated as 150 um',
    change: (d) => {
      getZone(d, 'arm').statedThicknessUm = 150
    },
    expect: 'fails',
  },
  {
    name: 'the arm stated as 150 um without a tolerance',
    change: (d) => {
      Object.assign(getZone(d, 'arm'), { statedThicknessUm: 150, statedToleranceUm: null })
    },
    expect: 'fails',
  },
  {
    name: 'the arm in round figures',
    change: (d) => {
      Object.assign(getZone(d, 'arm'), { statedThicknessUm: 70, statedToleranceUm: null })
    },
    expect: 'meets',
  },
  {
    name: 'the arm a fifth thicker than it adds up, without a tolerance',
    change: (d) => {
      Object.assign(getZone(d, 'arm'), { statedThicknessUm: 83, statedToleranceUm: null })
    },
    expect: 'fails',
  },
  {
    name: 'the arm 3 um off, to a whole micrometre, with a tolerance of 1 um',
    change: (d) => {
      Object.assign(getZone(d, 'arm'), { statedThicknessUm: 72.4, statedToleranceUm: 1 })
    },
    expect: 'fails',
  },
  { name: 'nothing stated', expect: 'not-applicable' },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
