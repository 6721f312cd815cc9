import type { ItemExample } from '../item-example'

export const featureListsExamples: readonly ItemExample[] = [
  { name: 'lists that are filled', expect: 'meets' },
  {
    name: 'no slit, marked so',
    change: (d) => {
      d.features.slits = []
      d.features.none = ['slits']
    },
    expect: 'meets',
  },
  {
    name: 'an empty list without a mark',
    change: (d) => {
      d.features.slits = []
    },
    expect: 'not-computed',
  },
  {
    name: 'plated layers on a part that is said to have no hole',
    change: (d) => {
      d.features.holes = []
      d.features.none = ['holes']
    },
    expect: 'fails',
  },
  {
    name: 'a mark beside entries',
    change: (d) => {
      d.features.none = ['pads']
    },
    expect: 'fails',
  },
  {
    name: 'copper in a bend that nothing is said to cross',
    change: (d) => {
      for (const conductor of d.features.conductors) conductor.crossings = []
      d.features.none = ['crossings']
    },
    expect: 'fails',
  },
]
