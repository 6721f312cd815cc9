import type { ItemExample } from '../item-example'

export const toolingChangeExamples: readonly ItemExample[] = [
  { name: 'one tool', expect: 'meets' },
  {
    name: 'another tool, not looked at',
    change: (d) => {
      d.brief.agreements.seriesTool = 'steel-rule-die'
    },
    expect: 'not-computed',
  },
  {
    name: 'another tool, limits do not hold',
    change: (d) => {
      Object.assign(d.brief.agreements, { seriesTool: 'steel-rule-die', limitsHoldForSeries: false })
    },
    expect: 'fails',
  },
  {
    name: 'another tool, limits hold',
    change: (d) => {
      Object.assign(d.brief.agreements, { seriesTool: 'steel-rule-die', limitsHoldForSeries: true })
    },
    expect: 'needs-judgment',
  },
  {
    name: 'tool open',
    change: (d) => {
      d.brief.agreements.prototypeTool = null
    },
    expect: 'not-computed',
  },
]
