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
    name: 'each of survival and slope usual, both together four fifths of the median',
    change: (d) => {
      Object.assign(d.brief, { lifeSurvivalPct: 90, lifeWeibullSlope: 8 })
    },
    expect: 'fails',
  },
  {
    name: 'the steepest slope, with a survival that leaves room for scatter',
    change: (d) => {
      Object.assign(d.brief, { lifeSurvivalPct: 99, lifeWeibullSlope: 8 })
    },
    expect: 'meets',
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
