import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const stiffenerOverlapExamples: readonly ItemExample[] = [
  { name: '1 mm', expect: 'meets' },
  {
    name: 'both end in one line',
    change: (d) => {
      getOnly(d.features.stiffeners).coverlayOverlapMm = 0
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.stiffeners).coverlayOverlapMm = null
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
