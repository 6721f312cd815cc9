import { findLibraryMaterial } from '@/lib/engine'
import { getBend, getConductorLayer, makeBendsFolds } from '../changes'
import type { ItemExample } from '../item-example'

export const bendStrainExamples: readonly ItemExample[] = [
  { name: 'a fold of one layer near the neutral axis', expect: 'meets' },
  {
    name: 'a foil that its record allows 1 % in one fold',
    change: (d) => {
      makeBendsFolds(d)
      Object.assign(getBend(d, 'hinge'), { insideRadiusMm: 0.5, radiusToleranceMm: 0.05 })
      const rolled = findLibraryMaterial('copper-ra')
      if (rolled?.foil == null) throw new RangeError('the library has no "copper-ra"')
      const allowableFoldOncePct = { value: 1, sourceKey: 'ownChoice', spread: null }
      d.materials.push({
        ...rolled,
        id: 'foil-of-our-own',
        name: 'Foil of our own',
        foil: { ...rolled.foil, allowableFoldOncePct },
      })
      getConductorLayer(d, 'l2').materialId = 'foil-of-our-own'
    },
    expect: 'fails',
  },
  {
    name: 'use unknown',
    change: (d) => {
      getBend(d, 'hinge').use = null
    },
    expect: 'not-computed',
  },
  {
    name: 'a fold that is asked for a thousand cycles',
    change: (d) => {
      makeBendsFolds(d)
      getBend(d, 'hinge').requiredCycles = 1000
    },
    expect: 'cannot-tell',
  },
  {
    name: 'every bend moves: its life decides',
    change: (d) => {
      for (const bend of d.bends) Object.assign(bend, { use: 'dynamic', requiredCycles: 1000 })
    },
    expect: 'not-applicable',
  },
]
