import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const operatingTemperatureExamples: readonly ItemExample[] = [
  { name: '70 degC', expect: 'meets' },
  {
    name: '160 degC',
    change: (d) => {
      d.brief.operatingMaxDegC = 160
    },
    expect: 'fails',
  },
  {
    name: '70 degC and a conductor that warms its adhesive by 100 degC',
    change: (d) => {
      getOnly(d.features.conductors).currentAmp = 2.5
    },
    expect: 'fails',
  },
  {
    name: 'a conductor whose current nobody stated',
    change: (d) => {
      getOnly(d.features.conductors).currentAmp = null
    },
    expect: 'not-computed',
  },
  {
    name: 'copper of which no conductor is listed',
    change: (d) => {
      d.features.conductors = []
    },
    expect: 'not-computed',
  },
  {
    name: '160 degC, whatever the current',
    change: (d) => {
      d.brief.operatingMaxDegC = 160
      getOnly(d.features.conductors).currentAmp = null
    },
    expect: 'fails',
  },
  {
    name: 'temperature open',
    change: (d) => {
      d.brief.operatingMaxDegC = null
    },
    expect: 'not-computed',
  },
]
