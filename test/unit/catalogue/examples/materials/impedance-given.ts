import { getConductorLayer, getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const impedanceGivenExamples: readonly ItemExample[] = [
  {
    name: 'given in full',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), {
        impedanceOhm: 50,
        impedance: { tolerancePct: 10, kind: 'single', referenceLayerId: 'l3', coupon: true, referenceUnbroken: null },
      })
      getConductorLayer(d, 'l3').role = 'plane'
      getConductorLayer(d, 'l3').planePattern = 'solid'
    },
    expect: 'meets',
  },
  {
    name: 'tolerance open',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), {
        impedanceOhm: 50,
        impedance: { tolerancePct: 10, kind: 'single', referenceLayerId: 'l3', coupon: true, referenceUnbroken: null },
      })
      getConductorLayer(d, 'l3').role = 'plane'
      getConductorLayer(d, 'l3').planePattern = 'solid'
      getOnly(d.features.conductors).impedance.tolerancePct = null
    },
    expect: 'not-computed',
  },
  {
    name: 'coupon open',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), {
        impedanceOhm: 50,
        impedance: { tolerancePct: 10, kind: 'single', referenceLayerId: 'l3', coupon: true, referenceUnbroken: null },
      })
      getConductorLayer(d, 'l3').role = 'plane'
      getConductorLayer(d, 'l3').planePattern = 'solid'
      getOnly(d.features.conductors).impedance.coupon = null
    },
    expect: 'not-computed',
  },
  {
    name: 'the reference carries conductors alone',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), {
        impedanceOhm: 50,
        impedance: { tolerancePct: 10, kind: 'single', referenceLayerId: 'l3', coupon: true, referenceUnbroken: null },
      })
      getConductorLayer(d, 'l3').role = 'plane'
      getConductorLayer(d, 'l3').planePattern = 'solid'
      Object.assign(getConductorLayer(d, 'l3'), { role: 'signal', planePattern: null })
    },
    expect: 'fails',
  },
  { name: 'no impedance stated', expect: 'not-applicable' },
]
