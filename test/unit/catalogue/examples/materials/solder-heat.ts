import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const solderHeatExamples: readonly ItemExample[] = [
  { name: 'bears the profile', expect: 'meets' },
  {
    name: 'coverlay does not',
    change: (d) => {
      d.brief.assembly.coverlayRatingDegC = 230
    },
    expect: 'fails',
  },
  {
    name: 'stiffener does not',
    change: (d) => {
      getOnly(d.features.stiffeners).heatRatingDegC = 230
    },
    expect: 'fails',
  },
  {
    name: 'stiffener comes after soldering',
    change: (d) => {
      Object.assign(getOnly(d.features.stiffeners), { heatRatingDegC: null, bonded: 'after-soldering' })
    },
    expect: 'meets',
  },
  {
    name: 'stiffener’s rating open',
    change: (d) => {
      getOnly(d.features.stiffeners).heatRatingDegC = null
    },
    expect: 'not-computed',
  },
  {
    name: 'a stiffener of which nothing is typed',
    change: (d) => {
      d.features.stiffeners = []
    },
    expect: 'not-computed',
  },
  {
    name: 'peak open',
    change: (d) => {
      d.brief.assembly.solderPeakDegC = null
    },
    expect: 'not-computed',
  },
  {
    name: 'nothing is soldered',
    change: (d) => {
      d.brief.solderedAssembly = false
    },
    expect: 'not-applicable',
  },
]
