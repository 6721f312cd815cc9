import type { ItemExample } from '../item-example'

export const couponTestExamples: readonly ItemExample[] = [
  { name: 'recorded as done', expect: 'meets' },
  {
    name: 'recorded as not done',
    change: (d) => {
      d.brief.couponTest = false
    },
    expect: 'fails',
  },
  {
    name: 'not known',
    change: (d) => {
      d.brief.couponTest = null
    },
    expect: 'not-computed',
  },
]
