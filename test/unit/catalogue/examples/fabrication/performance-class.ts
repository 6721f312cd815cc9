import type { ItemExample } from '../item-example'

export const performanceClassExamples: readonly ItemExample[] = [
  { name: 'class, type and uses stated', expect: 'needs-judgment' },
  {
    name: 'class open',
    change: (design) => {
      design.brief.performanceClass = null
    },
    expect: 'not-computed',
  },
  {
    name: 'no use stated',
    change: (design) => {
      design.brief.installationUses = []
    },
    expect: 'not-computed',
  },
]
