import { getConductorLayer, makeBendsFolds } from '../changes'
import type { ItemExample } from '../item-example'

export const planeInBendExamples: readonly ItemExample[] = [
  {
    name: 'hatched',
    change: (d) => {
      Object.assign(getConductorLayer(d, 'l2'), { role: 'plane', planePattern: 'hatched' })
    },
    expect: 'meets',
  },
  {
    name: 'solid',
    change: (d) => {
      Object.assign(getConductorLayer(d, 'l2'), { role: 'plane', planePattern: 'solid' })
    },
    expect: 'fails',
  },
  {
    name: 'pattern open',
    change: (d) => {
      getConductorLayer(d, 'l2').role = 'plane'
    },
    expect: 'not-computed',
  },
  {
    name: 'conductors and perhaps a plane, which nobody stated',
    change: (d) => {
      getConductorLayer(d, 'l2').role = 'mixed'
    },
    expect: 'not-computed',
  },
  {
    name: 'conductors, stated to be without a plane',
    change: (d) => {
      Object.assign(getConductorLayer(d, 'l2'), { role: 'mixed', planePattern: 'none' })
    },
    expect: 'not-applicable',
  },
  { name: 'signals only', expect: 'not-applicable' },
  {
    name: 'solid, in bends of which nobody stated the use',
    change: (d) => {
      Object.assign(getConductorLayer(d, 'l2'), { role: 'plane', planePattern: 'solid' })
      for (const bend of d.bends) bend.use = null
    },
    expect: 'not-computed',
  },
  {
    name: 'solid, where everything is folded once',
    change: (d) => {
      Object.assign(getConductorLayer(d, 'l2'), { role: 'plane', planePattern: 'solid' })
      makeBendsFolds(d)
    },
    expect: 'not-applicable',
  },
]

export const planeInFoldExamples: readonly ItemExample[] = [
  { name: 'signals only', expect: 'not-applicable' },
  {
    name: 'hatched',
    change: (d) => {
      Object.assign(getConductorLayer(d, 'l2'), { role: 'plane', planePattern: 'hatched' })
    },
    expect: 'meets',
  },
  {
    name: 'solid',
    change: (d) => {
      Object.assign(getConductorLayer(d, 'l2'), { role: 'plane', planePattern: 'solid' })
    },
    expect: 'fails',
  },
  {
    name: 'pattern open',
    change: (d) => {
      getConductorLayer(d, 'l2').role = 'plane'
    },
    expect: 'not-computed',
  },
]
