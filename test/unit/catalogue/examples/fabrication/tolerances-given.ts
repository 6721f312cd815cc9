import type { ItemExample } from '../item-example'

export const tolerancesGivenExamples: readonly ItemExample[] = [
  { name: 'all given: a person judges the datums', expect: 'needs-judgment' },
  {
    name: 'no word on datums',
    change: (d) => {
      d.brief.toleranceScheme = '-'
    },
    expect: 'not-computed',
  },
  {
    name: 'tighter than any shop holds',
    change: (d) => {
      Object.assign(d.brief.tolerances, { outlineMm: 0.02 })
    },
    expect: 'fails',
  },
  {
    name: 'thickness tighter than its layers',
    change: (d) => {
      for (const zone of d.construction.zones) zone.statedToleranceUm = 1
    },
    expect: 'fails',
  },
  {
    name: 'a layer that is said not to vary',
    change: (d) => {
      for (const layer of d.construction.layers)
        if (layer.id === 'cover-top' && layer.kind !== 'unbonded-gap')
          Object.assign(layer, { tolerancePlusUm: 0, toleranceMinusUm: 0 })
    },
    expect: 'fails',
  },
  {
    name: 'a radius that is said not to vary',
    change: (d) => {
      for (const bend of d.bends) bend.radiusToleranceMm = 0
    },
    expect: 'fails',
  },
  {
    name: 'stiffener open',
    change: (d) => {
      Object.assign(d.brief.tolerances, { stiffenerMm: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'thickness open',
    change: (d) => {
      for (const zone of d.construction.zones) zone.statedToleranceUm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'a text in place of numbers',
    change: (d) => {
      Object.assign(d.brief.tolerances, { outlineMm: null })
      d.brief.toleranceScheme = 'as usual'
    },
    expect: 'not-computed',
  },
]
