import { getConductorLayer, getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const returnPathExamples: readonly ItemExample[] = [
  {
    name: 'crosses no bend',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), {
        impedanceOhm: 50,
        impedance: { tolerancePct: 10, kind: 'single', referenceLayerId: 'l3', coupon: true, referenceUnbroken: null },
      })
      getConductorLayer(d, 'l3').role = 'plane'
      getConductorLayer(d, 'l3').planePattern = 'solid'
      getOnly(d.features.conductors).crossings = []
    },
    expect: 'needs-judgment',
  },
  {
    name: 'the reference is not in the flex zone that it crosses',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), {
        impedanceOhm: 50,
        impedance: { tolerancePct: 10, kind: 'single', referenceLayerId: 'l3', coupon: true, referenceUnbroken: null },
      })
      getConductorLayer(d, 'l3').role = 'plane'
      getConductorLayer(d, 'l3').planePattern = 'solid'
    },
    expect: 'fails',
  },
  {
    name: 'a gap of the plane under it is stated',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), {
        impedanceOhm: 50,
        impedance: { tolerancePct: 10, kind: 'single', referenceLayerId: 'l3', coupon: true, referenceUnbroken: false },
      })
      getConductorLayer(d, 'l3').role = 'plane'
      getConductorLayer(d, 'l3').planePattern = 'split'
      getOnly(d.features.conductors).crossings = []
    },
    expect: 'fails',
  },
  {
    name: 'reference open',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), {
        impedanceOhm: 50,
        impedance: { tolerancePct: 10, kind: 'single', referenceLayerId: 'l3', coupon: true, referenceUnbroken: null },
      })
      getConductorLayer(d, 'l3').role = 'plane'
      getConductorLayer(d, 'l3').planePattern = 'solid'
      getOnly(d.features.conductors).impedance.referenceLayerId = null
    },
    expect: 'not-computed',
  },
  { name: 'no impedance stated', expect: 'not-applicable' },
]
