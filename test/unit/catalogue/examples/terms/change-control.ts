import type { ItemExample } from '../item-example'

export const changeControlExamples: readonly ItemExample[] = [
  { name: 'agreed', expect: 'meets' },
  {
    name: 'materials may change',
    change: (d) => {
      d.brief.agreements.materialChange = 'free'
    },
    expect: 'fails',
  },
  {
    name: 'site open',
    change: (d) => {
      d.brief.agreements.siteChange = null
    },
    expect: 'not-computed',
  },
]
