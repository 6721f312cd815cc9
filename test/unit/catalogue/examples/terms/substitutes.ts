import { getBend, makeBendsFolds } from '../changes'
import type { ItemExample } from '../item-example'

export const substitutesExamples: readonly ItemExample[] = [
  { name: 'agreed', expect: 'meets' },
  {
    name: 'any foil in a moving bend',
    change: (d) => {
      d.brief.agreements.copperSubstitute = 'equivalent'
    },
    expect: 'fails',
  },
  {
    name: 'any foil, and the part stands still',
    change: (d) => {
      d.brief.agreements.copperSubstitute = 'equivalent'
      makeBendsFolds(d)
    },
    expect: 'meets',
  },
  {
    name: 'any foil, and nobody said how a bend is used',
    change: (d) => {
      d.brief.agreements.copperSubstitute = 'equivalent'
      makeBendsFolds(d)
      getBend(d, 'fold').use = null
    },
    expect: 'not-computed',
  },
  {
    name: 'film open',
    change: (d) => {
      d.brief.agreements.filmSubstitute = null
    },
    expect: 'not-computed',
  },
]
