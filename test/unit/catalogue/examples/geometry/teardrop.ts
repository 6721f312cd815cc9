import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const teardropExamples: readonly ItemExample[] = [
  { name: 'teardrop', expect: 'needs-judgment' },
  {
    name: 'none',
    change: (d) => {
      getOnly(d.features.pads).teardrop = false
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      getOnly(d.features.pads).teardrop = null
    },
    expect: 'not-computed',
  },
  {
    name: 'none, on a rigid board',
    change: (d) => {
      Object.assign(getOnly(d.features.pads), { teardrop: false, zoneId: 'board' })
    },
    expect: 'not-applicable',
  },
]
