import type { ItemExample } from '../item-example'

export const pullLoadExamples: readonly ItemExample[] = [
  { name: 'a tab', expect: 'meets' },
  {
    name: 'by the film',
    change: (d) => {
      d.brief.exposure.pullFeature = 'nothing'
    },
    expect: 'fails',
  },
  {
    name: 'nobody pulls',
    change: (d) => {
      d.brief.exposure.pullForceNewton = 0
    },
    expect: 'not-applicable',
  },
  {
    name: 'force open',
    change: (d) => {
      d.brief.exposure.pullForceNewton = null
    },
    expect: 'not-computed',
  },
]
