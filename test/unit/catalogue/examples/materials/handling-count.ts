import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const handlingCountExamples: readonly ItemExample[] = [
  { name: 'few times', expect: 'meets' },
  {
    name: 'a fold that is worked often',
    change: (d) => {
      Object.assign(getBend(d, 'fold').inProduct, { handlingCycles: 40 })
    },
    expect: 'fails',
  },
  {
    name: 'a dynamic bend that is worked often, within its cycles',
    change: (d) => {
      Object.assign(getBend(d, 'hinge').inProduct, { handlingCycles: 400 })
    },
    expect: 'meets',
  },
  {
    name: 'a dynamic bend that is worked more often than it moves',
    change: (d) => {
      Object.assign(getBend(d, 'hinge').inProduct, { handlingCycles: 200_000 })
    },
    expect: 'fails',
  },
  {
    name: 'count open',
    change: (d) => {
      Object.assign(getBend(d, 'fold').inProduct, { handlingCycles: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'use open, worked often',
    change: (d) => {
      Object.assign(getBend(d, 'fold').inProduct, { handlingCycles: 40 })
      getBend(d, 'fold').use = null
    },
    expect: 'not-computed',
  },
]
