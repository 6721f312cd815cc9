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
    name: 'a drill of 0.12 mm, which shops have, through twice the laminate',
    change: (d) => {
      for (const layer of d.construction.layers) if (layer.kind === 'rigid-laminate') layer.thicknessUm *= 2
      getOnly(d.features.holes).drillMm = 0.12
    },
    expect: 'fails',
  },
  {
    name: 'plated or not, nobody said',
    change: (d) => {
      getOnly(d.features.holes).plated = null
    },
    expect: 'not-computed',
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
