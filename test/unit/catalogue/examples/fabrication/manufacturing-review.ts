import type { ItemExample } from '../item-example'

export const manufacturingReviewExamples: readonly ItemExample[] = [
  { name: 'two weeks before, and held', facts: { daysSinceFabricatorLooked: 3 }, expect: 'meets' },
  { name: 'two weeks before, and nobody knows whether it was held', expect: 'not-computed' },
  {
    name: 'planned for later, and not held yet',
    facts: { evaluatedOn: '2026-11-01', daysSinceFabricatorLooked: null },
    expect: 'not-computed',
  },
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
  {
    name: 'the day has passed, and no fabricator looked',
    change: (d) => {
      Object.assign(d.brief, { manufacturingReviewDate: '2026-10-01', layoutFreezeDate: '2026-12-20' })
    },
    facts: { evaluatedOn: '2026-11-01', daysSinceFabricatorLooked: null },
    expect: 'fails',
  },
  {
    name: 'the day has passed, and a fabricator looked',
    change: (d) => {
      Object.assign(d.brief, { manufacturingReviewDate: '2026-10-01', layoutFreezeDate: '2026-12-20' })
    },
    facts: { evaluatedOn: '2026-11-01', daysSinceFabricatorLooked: 20 },
    expect: 'meets',
  },
]
