import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const requirementRangeExamples: readonly ItemExample[] = [
  { name: 'figures of the trade', expect: 'meets' },
  {
    name: 'a survival of 1 %',
    change: (d) => {
      d.brief.lifeSurvivalPct = 1
    },
    expect: 'fails',
  },
  {
    name: 'one cycle for a bend that moves',
    change: (d) => {
      getBend(d, 'hinge').requiredCycles = 1
    },
    expect: 'fails',
  },
  {
    name: 'an operating temperature that does not vary',
    change: (d) => {
      Object.assign(d.brief, { operatingMinDegC: 25, operatingMaxDegC: 25 })
    },
    expect: 'fails',
  },
  {
    name: 'nobody has said how hot it gets',
    change: (d) => {
      d.brief.operatingMaxDegC = null
    },
    expect: 'not-computed',
  },
]
