import type { ItemExample } from '../item-example'

export const prepregSetBackExamples: readonly ItemExample[] = [
  { name: 'agreed', expect: 'meets' },
  {
    name: 'too far inside',
    change: (d) => {
      Object.assign(d.features.rigidEdges, { prepregSetBackMm: 3 })
    },
    expect: 'fails',
  },
  {
    name: 'too much resin',
    change: (d) => {
      Object.assign(d.features.rigidEdges, { squeezeOutMm: 2 })
    },
    expect: 'fails',
  },
  {
    name: 'set-back open',
    change: (d) => {
      Object.assign(d.features.rigidEdges, { prepregSetBackMm: null })
    },
    expect: 'not-computed',
  },
]
