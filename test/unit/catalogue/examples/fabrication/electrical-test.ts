import type { ItemExample } from '../item-example'

export const electricalTestExamples: readonly ItemExample[] = [
  { name: 'recorded as done', expect: 'meets' },
  {
    name: 'recorded as not done',
    change: (d) => {
      d.brief.electricalTest = false
    },
    expect: 'fails',
  },
  {
    name: 'not known',
    change: (d) => {
      d.brief.electricalTest = null
    },
    expect: 'not-computed',
  },
]
