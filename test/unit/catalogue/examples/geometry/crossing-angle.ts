import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const crossingAngleExamples: readonly ItemExample[] = [
  { name: '90 degrees', expect: 'meets' },
  {
    name: '45 degrees',
    change: (d) => {
      Object.assign(getOnly(getOnly(d.features.conductors).crossings), { angleToAxisDeg: 45 })
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      Object.assign(getOnly(getOnly(d.features.conductors).crossings), { angleToAxisDeg: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'nothing crosses',
    change: (d) => {
      getOnly(d.features.conductors).crossings = []
      d.features.none = ['crossings']
    },
    expect: 'not-applicable',
  },
]
