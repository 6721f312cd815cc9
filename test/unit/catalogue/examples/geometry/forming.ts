import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const formingExamples: readonly ItemExample[] = [
  { name: 'with a tool', expect: 'needs-judgment' },
  {
    name: 'by hand, at a gentle radius',
    change: (d) => {
      Object.assign(getBend(d, 'fold').forming, { method: 'by-hand' })
      Object.assign(getBend(d, 'fold'), { insideRadiusMm: 8 })
    },
    expect: 'needs-judgment',
  },
  {
    name: 'by hand, at a tight radius',
    change: (d) => {
      Object.assign(getBend(d, 'fold').forming, { method: 'by-hand' })
      Object.assign(getBend(d, 'fold'), { insideRadiusMm: 1 })
    },
    expect: 'fails',
  },
  {
    name: 'springback forgotten',
    change: (d) => {
      Object.assign(getBend(d, 'fold').forming, { springbackAllowed: false })
    },
    expect: 'fails',
  },
  {
    name: 'nobody said who forms it',
    change: (d) => {
      Object.assign(getBend(d, 'fold').forming, { by: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'use open',
    change: (d) => {
      getBend(d, 'fold').use = null
    },
    expect: 'not-computed',
  },
  {
    name: 'every bend moves',
    change: (d) => {
      Object.assign(getBend(d, 'fold'), { use: 'dynamic', requiredCycles: 100 })
    },
    expect: 'not-applicable',
  },
]
