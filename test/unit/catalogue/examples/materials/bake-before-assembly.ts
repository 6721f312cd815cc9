import type { ItemExample } from '../item-example'

export const bakeBeforeAssemblyExamples: readonly ItemExample[] = [
  { name: 'soldered part', expect: 'needs-judgment' },
  {
    name: 'nothing is soldered',
    change: (d) => {
      d.brief.solderedAssembly = false
    },
    expect: 'not-applicable',
  },
]
