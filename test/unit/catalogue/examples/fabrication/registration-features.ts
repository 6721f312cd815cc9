import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const registrationFeaturesExamples: readonly ItemExample[] = [
  { name: 'held', expect: 'needs-judgment' },
  {
    name: 'not held',
    change: (d) => {
      getOnly(d.features.registrations).heldMm = 0.2
    },
    expect: 'fails',
  },
  {
    name: 'nobody asked the fabricator',
    change: (d) => {
      getOnly(d.features.registrations).heldMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'no list, and no mark',
    change: (d) => {
      d.features.registrations = []
    },
    expect: 'not-computed',
  },
  {
    name: 'marked as having none',
    change: (d) => {
      d.features.registrations = []
      d.features.none = ['registrations']
    },
    expect: 'not-applicable',
  },
]
