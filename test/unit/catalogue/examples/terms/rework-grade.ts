import type { ItemExample } from '../item-example'

export const reworkGradeExamples: readonly ItemExample[] = [
  { name: 'grade R', expect: 'meets' },
  {
    name: 'as many removals as solderings',
    change: (d) => {
      d.brief.acceptance.solderingsOffCount = 3
    },
    expect: 'fails',
  },
  {
    name: 'open',
    change: (d) => {
      d.brief.acceptance.solderingsOffCount = null
    },
    expect: 'not-computed',
  },
  {
    name: 'not soldered',
    change: (d) => {
      d.brief.solderedAssembly = false
    },
    expect: 'not-applicable',
  },
]
