import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const cornerRadiusExamples: readonly ItemExample[] = [
  { name: '1.5 mm', expect: 'meets' },
  {
    name: '30 mil beside flex',
    change: (d) => {
      getOnly(d.features.outlineCorners).insideRadiusMm = 0.762
    },
    expect: 'fails',
  },
  {
    name: '30 mil away from flex',
    change: (d) => {
      Object.assign(getOnly(d.features.outlineCorners), { insideRadiusMm: 0.762, bordersFlex: false })
    },
    expect: 'meets',
  },
  {
    name: '30 mil, and nobody said whether flex ends there',
    change: (d) => {
      Object.assign(getOnly(d.features.outlineCorners), { insideRadiusMm: 0.762, bordersFlex: null })
    },
    expect: 'not-computed',
  },
  {
    name: '0.3 mm',
    change: (d) => {
      getOnly(d.features.outlineCorners).insideRadiusMm = 0.3
    },
    expect: 'fails',
  },
  {
    name: 'no inside corner',
    change: (d) => {
      d.features.outlineCorners = []
      d.features.none = ['outlineCorners']
    },
    expect: 'not-applicable',
  },
]
