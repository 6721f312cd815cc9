import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const wearExamples: readonly ItemExample[] = [
  { name: 'rubs on nothing', expect: 'needs-judgment' },
  {
    name: 'a guide with a radius',
    change: (d) => {
      Object.assign(getBend(d, 'hinge').inProduct, { rubsOn: 'guide-with-radius' })
    },
    expect: 'needs-judgment',
  },
  {
    name: 'an edge',
    change: (d) => {
      Object.assign(getBend(d, 'hinge').inProduct, { rubsOn: 'edge-or-surface' })
    },
    expect: 'fails',
  },
  {
    name: 'a fold does not move',
    change: (d) => {
      Object.assign(getBend(d, 'fold').inProduct, { rubsOn: 'edge-or-surface' })
    },
    expect: 'needs-judgment',
  },
  {
    name: 'not stated',
    change: (d) => {
      Object.assign(getBend(d, 'hinge').inProduct, { rubsOn: null })
    },
    expect: 'not-computed',
  },
]
