import type { ItemExample } from '../item-example'

export const bowAndTwistExamples: readonly ItemExample[] = [
  { name: 'flat enough for surface-mount parts', expect: 'meets' },
  {
    name: 'too wide for surface-mount parts',
    change: (d) => {
      d.brief.acceptance.bowAndTwistPct = 1
    },
    expect: 'fails',
  },
  {
    name: 'wide, and no surface-mount parts',
    change: (d) => {
      Object.assign(d.brief.acceptance, { bowAndTwistPct: 1, hasSurfaceMountParts: false })
    },
    expect: 'meets',
  },
  {
    name: 'wide, and nobody said which parts',
    change: (d) => {
      Object.assign(d.brief.acceptance, { bowAndTwistPct: 1, hasSurfaceMountParts: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'too wide for any part',
    change: (d) => {
      Object.assign(d.brief.acceptance, { bowAndTwistPct: 2, hasSurfaceMountParts: null })
    },
    expect: 'fails',
  },
  {
    name: 'open',
    change: (d) => {
      d.brief.acceptance.bowAndTwistPct = null
    },
    expect: 'not-computed',
  },
]
