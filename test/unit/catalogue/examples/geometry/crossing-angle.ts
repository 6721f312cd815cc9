import { getCrossing, getLayer, getOnly, getZone } from '../changes'
import type { ItemExample } from '../item-example'

export const crossingAngleExamples: readonly ItemExample[] = [
  { name: '90 degrees', expect: 'meets' },
  {
    name: '45 degrees',
    change: (d) => {
      Object.assign(getCrossing(d, 'hinge'), { angleToAxisDeg: 45 })
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      Object.assign(getCrossing(d, 'hinge'), { angleToAxisDeg: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'a bend that nothing is said to cross, though its conductors’ layer runs through it',
    change: (d) => {
      const supply = getOnly(d.features.conductors)
      supply.crossings = supply.crossings.filter(({ bendId }) => bendId !== 'rocker')
    },
    expect: 'not-computed',
  },
  {
    name: 'nothing is said to cross, and the conductors’ layer runs through the bend',
    change: (d) => {
      getOnly(d.features.conductors).crossings = []
      d.features.none = ['crossings']
    },
    expect: 'not-computed',
  },
  {
    name: 'nothing crosses: no copper of a conductor layer reaches a bend',
    change: (d) => {
      getOnly(d.features.conductors).crossings = []
      d.features.none = ['crossings']
      for (const { zoneId } of d.bends) {
        const zone = getZone(d, zoneId)
        for (const each of zone.presence) if (getLayer(d, each.layerId).kind === 'conductor') each.coverageFraction = 0
      }
    },
    expect: 'not-applicable',
  },
]
