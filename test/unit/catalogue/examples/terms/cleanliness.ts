import type { ItemExample } from '../item-example'

export const cleanlinessExamples: readonly ItemExample[] = [
  { name: 'agreed', expect: 'meets' },
  {
    name: 'dried too hot',
    change: (d) => {
      d.brief.exposure.dryingDegC = 400
    },
    expect: 'fails',
  },
  {
    name: 'not cleaned, with a limit',
    change: (d) => {
      Object.assign(d.brief.exposure, { cleaning: 'none', dryingDegC: null, dryingHours: null })
    },
    expect: 'meets',
  },
  {
    name: 'time of drying open',
    change: (d) => {
      d.brief.exposure.dryingHours = null
    },
    expect: 'not-computed',
  },
  {
    name: 'limit open',
    change: (d) => {
      d.brief.exposure.ionicLimitUgPerCm2 = null
    },
    expect: 'not-computed',
  },
]
