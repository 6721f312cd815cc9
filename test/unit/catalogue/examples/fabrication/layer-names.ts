import { getLayer } from '../changes'
import type { ItemExample } from '../item-example'

export const layerNamesExamples: readonly ItemExample[] = [
  { name: 'names that say it', expect: 'meets' },
  {
    name: 'a flex layer called Layer 5',
    change: (d) => {
      getLayer(d, 'l2').name = 'Layer 5'
    },
    expect: 'fails',
  },
  {
    name: 'flex by its letter and number',
    change: (d) => {
      getLayer(d, 'l2').name = 'FL2'
    },
    expect: 'meets',
  },
  {
    name: 'two layers of one name',
    change: (d) => {
      getLayer(d, 'l3').name = 'L1 rigid'
    },
    expect: 'fails',
  },
  {
    name: 'two layers whose names differ by capitals alone',
    change: (d) => {
      getLayer(d, 'l3').name = 'L1 RIGID'
    },
    expect: 'fails',
  },
]
