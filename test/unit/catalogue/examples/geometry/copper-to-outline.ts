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
    name: '0.4 mm, routed',
    change: (d) => {
      Object.assign(d.features, { copperToOutlineMm: 0.4, outlineCutBy: 'rout' })
    },
    expect: 'fails',
  },
  {
    name: '0.4 mm, and nobody said how it is cut',
    change: (d) => {
      Object.assign(d.features, { copperToOutlineMm: 0.4, outlineCutBy: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'not measured',
    change: (d) => {
      d.features.copperToOutlineMm = null
    },
    expect: 'not-computed',
  },
  {
    name: '0.4 mm, cut by a die',
    change: (d) => {
      Object.assign(d.features, { copperToOutlineMm: 0.4, outlineCutBy: 'die' })
    },
    expect: 'meets',
  },
  {
    name: '0.4 mm, cut by laser',
    change: (d) => {
      Object.assign(d.features, { copperToOutlineMm: 0.4, outlineCutBy: 'laser' })
    },
    expect: 'meets',
  },
]
