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
    name: 'a dynamic bend in a part for installation and for heat',
    change: (d) => {
      Object.assign(d.brief, { installationUses: ['use-a', 'use-c'], operatingMaxDegC: 110 })
    },
    expect: 'fails',
  },
  {
    name: '110 degC in a part for continuous flexing',
    change: (d) => {
      Object.assign(d.brief, { installationUses: ['use-b'], operatingMaxDegC: 110 })
    },
    expect: 'fails',
  },
  {
    name: '110 degC in a part for continuous flexing and heat',
    change: (d) => {
      Object.assign(d.brief, { installationUses: ['use-b', 'use-c'], operatingMaxDegC: 110 })
    },
    expect: 'meets',
  },
  {
    name: 'use not stated',
    change: (d) => {
      getBend(d, 'fold').use = null
    },
    expect: 'not-computed',
  },
]
