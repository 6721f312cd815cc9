import { getFilm, getPresence, getZone } from '../changes'
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
    name: 'nobody said whether the contacts are plated',
    change: (d) => {
      getPresence(d, 'fingers', 'l2').platedCopper = null
    },
    expect: 'not-computed',
  },
  {
    name: 'finish of unknown thickness on the contacts',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-silver'
      getZone(d, 'fingers').contactFinish = null
    },
    expect: 'not-computed',
  },
  {
    name: 'no finish at all',
    change: (d) => {
      d.brief.surfaceFinish = 'none'
      getZone(d, 'fingers').contactFinish = null
    },
    expect: 'meets',
  },
  {
    name: 'a finish that fills the window',
    change: (d) => {
      getZone(d, 'fingers').contactFinish = { thicknessUm: 40, toleranceUm: 0 }
    },
    expect: 'fails',
  },
  {
    name: 'window unknown',
    change: (d) => {
      getZone(d, 'fingers').connectorWindow = null
    },
    expect: 'not-computed',
  },
]
