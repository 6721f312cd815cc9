import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const transitionStripExamples: readonly ItemExample[] = [
  { name: 'hole at 2 mm, component at 3 mm', expect: 'meets' },
  {
    name: 'hole at 1.4 mm',
    change: (d) => {
      getOnly(d.features.holes).transitionDistanceMm = 1.4
    },
    expect: 'fails',
  },
  {
    name: 'component at 0.5 mm',
    change: (d) => {
      getOnly(d.features.components).transitionDistanceMm = 0.5
    },
    expect: 'fails',
  },
  {
    name: 'hole not measured',
    change: (d) => {
      getOnly(d.features.holes).transitionDistanceMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'no hole listed, and the list not marked',
    change: (d) => {
      d.features.holes = []
    },
    expect: 'not-computed',
  },
  {
    name: 'no component listed, and the list not marked',
    change: (d) => {
      d.features.components = []
    },
    expect: 'not-computed',
  },
]
