import type { ItemExample } from '../item-example'

export const contactPersonExamples: readonly ItemExample[] = [
  { name: 'somebody is named', expect: 'needs-judgment' },
  {
    name: 'a dash in place of a name',
    change: (design) => {
      design.brief.whoToAsk = '-'
    },
    expect: 'not-computed',
  },
]
