import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const stiffenerHolesExamples: readonly ItemExample[] = [
  {
    name: 'wide enough',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'fingers', stiffenerHoleMm: 0.8 })
    },
    expect: 'meets',
  },
  {
    name: 'too narrow',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'fingers', stiffenerHoleMm: 0.5 })
    },
    expect: 'fails',
  },
  {
    name: 'closed on purpose',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'fingers', stiffenerHoleMm: 0 })
    },
    expect: 'not-applicable',
  },
  {
    name: 'not stated',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: 'fingers' })
    },
    expect: 'not-computed',
  },
  {
    name: 'zone open',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { zoneId: null })
    },
    expect: 'not-computed',
  },
  { name: 'in a board without a stiffener', expect: 'not-applicable' },
]
