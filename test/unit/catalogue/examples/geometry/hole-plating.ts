import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const holePlatingExamples: readonly ItemExample[] = [
  { name: 'a full wall', expect: 'meets' },
  {
    name: 'a thin wall',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = 12
    },
    expect: 'fails',
  },
  {
    name: 'enough for class 2, not for class 3',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = 22
      d.brief.performanceClass = 'class-3'
    },
    expect: 'fails',
  },
  {
    name: 'enough unless it is class 3, which nobody said',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = 22
      d.brief.performanceClass = null
    },
    expect: 'not-computed',
  },
  {
    name: 'plated or not, nobody said',
    change: (d) => {
      getOnly(d.features.holes).plated = null
    },
    expect: 'not-computed',
  },
  {
    name: 'not stated',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = null
    },
    expect: 'not-computed',
  },
]
