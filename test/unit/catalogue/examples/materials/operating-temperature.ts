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
    name: 'temperature open',
    change: (d) => {
      d.brief.operatingMaxDegC = null
    },
    expect: 'not-computed',
  },
]
