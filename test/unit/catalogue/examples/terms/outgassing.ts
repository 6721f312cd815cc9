import type { ItemExample } from '../item-example'

export const outgassingExamples: readonly ItemExample[] = [
  { name: 'all within', expect: 'meets' },
  {
    name: 'too much of one',
    change: (d) => {
      d.brief.outgassing = d.brief.outgassing.map((entry, at) => (at === 0 ? { ...entry, totalLossPct: 1.2 } : entry))
    },
    expect: 'fails',
  },
  {
    name: 'too much condensable',
    change: (d) => {
      d.brief.outgassing = d.brief.outgassing.map((entry, at) => (at === 0 ? { ...entry, condensablePct: 0.2 } : entry))
    },
    expect: 'fails',
  },
  {
    name: 'one open',
    change: (d) => {
      d.brief.outgassing.pop()
    },
    expect: 'not-computed',
  },
  {
    name: 'nothing weighed',
    change: (d) => {
      d.brief.outgassing = []
    },
    expect: 'not-computed',
  },
]
