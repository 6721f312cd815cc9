import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const stiffenerToBendExamples: readonly ItemExample[] = [
  { name: '5 mm away', expect: 'meets' },
  {
    name: 'on the edge of the bend',
    change: (d) => {
      getOnly(d.features.stiffeners).nearestBend = { bendId: 'hinge', distanceMm: 0 }
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.stiffeners).nearestBend = null
    },
    expect: 'not-computed',
  },
  {
    name: 'in the construction, and nothing said of it yet',
    change: (d) => {
      d.features.stiffeners = []
    },
    expect: 'not-computed',
  },
  {
    name: 'none in the construction',
    change: (d) => {
      const gone = new Set(d.construction.layers.filter(({ kind }) => kind === 'stiffener').map(({ id }) => id))
      d.features.stiffeners = []
      d.construction.layers = d.construction.layers.filter(({ id }) => !gone.has(id))
      for (const zone of d.construction.zones) zone.presence = zone.presence.filter(({ layerId }) => !gone.has(layerId))
    },
    expect: 'not-applicable',
  },
]
