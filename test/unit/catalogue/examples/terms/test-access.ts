import type { ItemExample } from '../item-example'

export const testAccessExamples: readonly ItemExample[] = [
  { name: 'every design with a test', expect: 'needs-judgment' },
  {
    name: 'no electrical test',
    change: (d) => {
      d.brief.electricalTest = false
    },
    expect: 'not-applicable',
  },
]
