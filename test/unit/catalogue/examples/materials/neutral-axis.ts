import { getFilm, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const neutralAxisExamples: readonly ItemExample[] = [
  { name: 'one layer, films about equal', expect: 'meets' },
  {
    name: 'coverlay film of 125 um on one side',
    change: (d) => {
      getFilm(d, 'cover-top').thicknessUm = 125
    },
    expect: 'fails',
  },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
