import type { ItemExample } from '../item-example'

export const esdEntryExamples: readonly ItemExample[] = [
  { name: 'a path', expect: 'needs-judgment' },
  {
    name: 'no path',
    change: (d) => {
      d.brief.exposure.dischargePath = 'nothing'
    },
    expect: 'fails',
  },
  {
    name: 'enclosed',
    change: (d) => {
      d.brief.exposure.dischargeEntry = 'nowhere'
    },
    expect: 'not-applicable',
  },
  {
    name: 'path open',
    change: (d) => {
      d.brief.exposure.dischargePath = null
    },
    expect: 'not-computed',
  },
]
