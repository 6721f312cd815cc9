import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const damageSumExamples: readonly ItemExample[] = [
  { name: 'two easy bends', expect: 'meets' },
  {
    name: 'one bend at 0.5 mm beside another',
    change: (d) => {
      getBend(d, 'rocker').insideRadiusMm = 0.5
    },
    expect: 'fails',
  },
  {
    name: 'cycles of one not stated',
    change: (d) => {
      getBend(d, 'rocker').requiredCycles = null
    },
    expect: 'not-computed',
  },
  {
    name: 'one dynamic bend',
    change: (d) => {
      d.bends = d.bends.filter((bend) => bend.id !== 'rocker')
      for (const conductor of d.features.conductors)
        conductor.crossings = conductor.crossings.filter(({ bendId }) => bendId !== 'rocker')
    },
    expect: 'not-applicable',
  },
  {
    name: 'use of a further bend not stated: it may move too',
    change: (d) => {
      getBend(d, 'fold').use = null
    },
    expect: 'not-computed',
  },
]
