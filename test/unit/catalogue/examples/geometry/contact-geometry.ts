import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const contactGeometryExamples: readonly ItemExample[] = [
  { name: 'all within the drawing', expect: 'meets' },
  {
    name: 'pitch right at nominal alone',
    change: (d) => {
      getOnly(d.features.connectors).pitch.toleranceMm = 0.05
    },
    expect: 'thin-margin',
  },
  {
    name: 'contacts too wide',
    change: (d) => {
      getOnly(d.features.connectors).contactWidth.partMm = 0.4
    },
    expect: 'fails',
  },
  {
    name: 'contacts that touch, each dimension within the drawing',
    change: (d) => {
      getOnly(d.features.connectors).contactWidth = { partMm: 0.5, toleranceMm: 0.03, minMm: 0.3, maxMm: 0.6 }
    },
    expect: 'fails',
  },
  {
    name: 'contacts that their tolerances let touch',
    change: (d) => {
      const connector = getOnly(d.features.connectors)
      connector.contactWidth = { partMm: (connector.pitch.partMm ?? 0) - 0.06, toleranceMm: 0.03, minMm: 0.1, maxMm: 2 }
    },
    expect: 'thin-margin',
  },
  {
    name: 'stiffener too short',
    change: (d) => {
      getOnly(d.features.connectors).stiffenerLength.partMm = 5
    },
    expect: 'fails',
  },
  {
    name: 'connector’s limits not entered',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors).pitch, { minMm: null, maxMm: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'tolerance not entered',
    change: (d) => {
      getOnly(d.features.connectors).endWidth.toleranceMm = null
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
