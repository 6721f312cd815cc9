import type { ItemExample } from '../item-example'

export const fluidsExamples: readonly ItemExample[] = [
  { name: 'withstood', expect: 'needs-judgment' },
  {
    name: 'not withstood',
    change: (d) => {
      d.brief.exposure.fluidsWithstood = false
    },
    expect: 'fails',
  },
  {
    name: 'nothing reaches it',
    change: (d) => {
      d.brief.exposure.oils = 'none'
    },
    expect: 'not-applicable',
  },
  {
    name: 'one open',
    change: (d) => {
      Object.assign(d.brief.exposure, { oils: 'none', light: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'nobody asked',
    change: (d) => {
      d.brief.exposure.fluidsWithstood = null
    },
    expect: 'not-computed',
  },
]
