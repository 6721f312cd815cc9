import type { ItemExample } from '../item-example'

export const moistureSweatExamples: readonly ItemExample[] = [
  { name: 'sealed, copper away from the edge', expect: 'needs-judgment' },
  {
    name: 'copper at the edge',
    change: (d) => {
      d.features.copperToOutlineMm = 0.3
    },
    expect: 'fails',
  },
  {
    name: 'nothing seals it',
    change: (d) => {
      d.brief.exposure.sealedBy = 'nothing'
    },
    expect: 'fails',
  },
  {
    name: 'dry',
    change: (d) => {
      d.brief.exposure.hasWetEdges = false
    },
    expect: 'not-applicable',
  },
  {
    name: 'nobody said',
    change: (d) => {
      d.brief.exposure.hasWetEdges = null
    },
    expect: 'not-computed',
  },
  {
    name: 'seal open',
    change: (d) => {
      d.brief.exposure.sealedBy = null
    },
    expect: 'not-computed',
  },
]
