import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const openLandExamples: readonly ItemExample[] = [
  { name: 'wide enough over the shift', expect: 'meets' },
  {
    name: 'a small land, covered by the shift',
    change: (d) => {
      Object.assign(getOnly(d.features.coverlayOpenings), { openingMm: 0.8, landMm: 0.8, neededOpenMm: 0.5 })
    },
    expect: 'thin-margin',
  },
  {
    name: 'too small for squeeze-out alone',
    change: (d) => {
      Object.assign(getOnly(d.features.coverlayOpenings), { openingMm: 0.5, landMm: 0.8, neededOpenMm: 0.4 })
    },
    expect: 'fails',
  },
  {
    name: 'need open',
    change: (d) => {
      Object.assign(getOnly(d.features.coverlayOpenings), { neededOpenMm: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'tolerance of the coverlay open',
    change: (d) => {
      d.brief.tolerances.coverlayMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'land open',
    change: (d) => {
      Object.assign(getOnly(d.features.coverlayOpenings), { landMm: null })
    },
    expect: 'not-computed',
  },
]
