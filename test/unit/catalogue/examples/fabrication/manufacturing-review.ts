import type { ItemExample } from '../item-example'

export const manufacturingReviewExamples: readonly ItemExample[] = [
  { name: 'two weeks before', expect: 'meets' },
  {
    name: 'a month after',
    change: (d) => {
      d.brief.manufacturingReviewDate = '2027-03-15'
    },
    expect: 'fails',
  },
  {
    name: 'no date',
    change: (d) => {
      d.brief.layoutFreezeDate = null
    },
    expect: 'not-computed',
  },
]
