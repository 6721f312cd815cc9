import type { ItemExample } from '../item-example'

export const substancesExamples: readonly ItemExample[] = [
  { name: 'stated', expect: 'meets' },
  {
    name: 'halogen-free with restricted substances',
    change: (d) => {
      Object.assign(d.brief.agreements, { isHalogenFree: true, isRestricted: false })
    },
    expect: 'fails',
  },
  {
    name: 'halogens open',
    change: (d) => {
      d.brief.agreements.isHalogenFree = null
    },
    expect: 'not-computed',
  },
]
