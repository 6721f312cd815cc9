import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const bendUseExamples: readonly ItemExample[] = [
  { name: 'dynamic bends in a part for continuous flexing', expect: 'meets' },
  {
    name: 'a dynamic bend in a part flexed at installation only',
    change: (d) => {
      d.brief.installationUses = ['use-a']
    },
    expect: 'fails',
  },
  {
    name: 'use not stated',
    change: (d) => {
      getBend(d, 'fold').use = null
    },
    expect: 'not-computed',
  },
]
