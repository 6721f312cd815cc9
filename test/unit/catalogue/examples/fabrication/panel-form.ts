import type { ItemExample } from '../item-example'

export const panelFormExamples: readonly ItemExample[] = [
  { name: 'arrays for soldering', expect: 'meets' },
  {
    name: 'single parts for soldering',
    change: (d) => {
      d.brief.panelForm = 'single-parts'
    },
    expect: 'fails',
  },
  {
    name: 'not agreed',
    change: (d) => {
      d.brief.panelForm = null
    },
    expect: 'not-computed',
  },
]
