import { addFlexLayers, getOnly, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

export const holeAspectExamples: readonly ItemExample[] = [
  { name: '0.3 mm drill through some 0.65 mm', expect: 'meets' },
  {
    name: '0.05 mm drill',
    change: (d) => {
      getOnly(d.features.holes).drillMm = 0.05
    },
    expect: 'fails',
  },
  {
    name: 'in which zone, nobody said',
    change: (d) => {
      getOnly(d.features.holes).zoneId = null
    },
    expect: 'not-computed',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
  {
    name: 'a drill of 0.03 mm through thin film',
    change: (d) => {
      addFlexLayers(d, 2)
      Object.assign(getOnly(d.features.holes), { zoneId: 'arm', drillMm: 0.03 })
    },
    expect: 'fails',
  },
]
