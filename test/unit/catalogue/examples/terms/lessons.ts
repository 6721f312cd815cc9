import type { ItemExample } from '../item-example'

export const lessonsExamples: readonly ItemExample[] = [
  { name: 'gone through', expect: 'needs-judgment' },
  {
    name: 'not gone through',
    change: (d) => {
      d.brief.agreements.lessonsReviewed = false
    },
    expect: 'fails',
  },
  {
    name: 'nobody said',
    change: (d) => {
      d.brief.agreements.lessonsReviewed = null
    },
    expect: 'not-computed',
  },
  {
    name: 'the first of its kind',
    change: (d) => {
      d.brief.agreements.hasPredecessor = false
    },
    expect: 'not-applicable',
  },
  {
    name: 'nobody said whether there was one',
    change: (d) => {
      d.brief.agreements.hasPredecessor = null
    },
    expect: 'not-computed',
  },
]
