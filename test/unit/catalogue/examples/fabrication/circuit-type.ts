import type { ItemExample } from '../item-example'

export const circuitTypeExamples: readonly ItemExample[] = [
  { name: 'type 4 for a rigid-flex part', expect: 'meets' },
  {
    name: 'type 1 for the same',
    change: (d) => {
      d.brief.circuitType = 'type-1'
    },
    expect: 'fails',
  },
  {
    name: 'not stated',
    change: (d) => {
      d.brief.circuitType = null
    },
    expect: 'not-computed',
  },
]
