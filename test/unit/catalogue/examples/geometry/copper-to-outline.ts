import type { ItemExample } from '../item-example'

export const copperToOutlineExamples: readonly ItemExample[] = [
  { name: '0.6 mm', expect: 'meets' },
  {
    name: '0.2 mm',
    change: (d) => {
      d.features.copperToOutlineMm = 0.2
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      d.features.copperToOutlineMm = null
    },
    expect: 'not-computed',
  },
]
