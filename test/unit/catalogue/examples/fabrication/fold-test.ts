import { makeBendsFolds } from '../changes'
import type { ItemExample } from '../item-example'

export const foldTestExamples: readonly ItemExample[] = [
  { name: 'recorded as done', expect: 'meets' },
  {
    name: 'recorded as not done',
    change: (d) => {
      d.brief.foldTest = false
    },
    expect: 'fails',
  },
  {
    name: 'not known',
    change: (d) => {
      d.brief.foldTest = null
    },
    expect: 'not-computed',
  },
  {
    name: 'asked of folds too, and not asked for',
    change: (d) => {
      makeBendsFolds(d)
      d.brief.foldTest = false
    },
    expect: 'fails',
  },
]
