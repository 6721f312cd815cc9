import { getConductorLayer, getOnly, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const foilWeightExamples: readonly ItemExample[] = [
  { name: '12 um for 0.4 A in 0.5 mm', expect: 'meets' },
  {
    name: 'two-ounce foil for the same current',
    change: (d) => {
      getConductorLayer(d, 'l2').thicknessUm = 68.6
    },
    expect: 'fails',
  },
  {
    name: '18 um where the shelf holds 12',
    change: (d) => {
      getConductorLayer(d, 'l2').thicknessUm = 18
      Object.assign(getOnly(d.features.conductors), { currentAmp: 0.01 })
    },
    facts: { lightestHeldFoilUm: 12 },
    expect: 'fails',
  },
  {
    name: 'a signal that carries no power asks for no foil',
    change: (d) => {
      Object.assign(getOnly(d.features.conductors), { carriesPower: false, currentAmp: null })
    },
    expect: 'meets',
  },
  {
    name: 'heavy foil on a rigid layer alone',
    change: (d) => {
      getConductorLayer(d, 'l1').thicknessUm = 68.6
      getOnly(d.features.conductors).layerId = 'l1'
    },
    expect: 'not-computed',
  },
  {
    name: '18 um where the shelf holds nothing lighter',
    change: (d) => {
      getConductorLayer(d, 'l2').thicknessUm = 18
    },
    facts: { lightestHeldFoilUm: 18 },
    expect: 'meets',
  },
  {
    name: 'current not stated',
    change: (d) => {
      getOnly(d.features.conductors).currentAmp = null
    },
    expect: 'not-computed',
  },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
