import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const contactStrainExamples: readonly ItemExample[] = [
  { name: 'free of load', expect: 'needs-judgment' },
  {
    name: 'inserted blind',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { isBlindInsertion: true })
    },
    expect: 'fails',
  },
  {
    name: 'a hole before the first bend',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { hasPlaneOrHoleBeforeBend: true })
    },
    expect: 'fails',
  },
  {
    name: 'bends too soon',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { firstBendMm: 1 })
    },
    expect: 'fails',
  },
  {
    name: 'distance open',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { firstBendMm: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'insertion open',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { isBlindInsertion: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'a finger end without its connector',
    change: (d) => {
      d.features.connectors = []
    },
    expect: 'not-computed',
  },
  {
    name: 'no contact end',
    change: (d) => {
      d.features.connectors = []
      d.construction.zones = d.construction.zones.filter(({ kind }) => kind !== 'finger')
      d.construction.layers = d.construction.layers.filter(({ id }) => !id.startsWith('stiffener'))
      d.features.stiffeners = []
    },
    expect: 'not-applicable',
  },
]
