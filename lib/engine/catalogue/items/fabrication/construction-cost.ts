import { DESIGN_PLACE } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'

export const constructionCost = defineItem({
  id: 'construction-cost',
  section: 'fabrication',
  severity: 'advice',
  question: 'Has the cost of this construction been compared with its alternatives?',
  titles: { meets: 'No alternative is much cheaper', fails: 'An alternative that meets the need is much cheaper' },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: ['costOverCheapestRatio'],
  sourceKeys: [],
  restsOn: [
    ...SECTION_INPUTS,
    'features.holes',
    'features.outline',
    'features.coverlayOpenings',
    'features.stiffeners',
    'brief.quantityPerYear',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'facts.costOverCheapestRatio', worse: 'larger' }],
  check: (context) => {
    const { costOverCheapestRatio } = context.facts
    return [
      costOverCheapestRatio === undefined
        ? notComputed(['facts', 'costOverCheapestRatio'], 'cost of this construction and its alternatives', [
            DESIGN_PLACE,
          ])
        : decide({
            value: costOverCheapestRatio,
            limit: context.getLimit('costOverCheapestRatio'),
            places: [DESIGN_PLACE],
            what: 'cost against the cheapest alternative',
            equation: 'ratio of the sums of process steps',
            cautions: ['An open table of steps and rates: compare ratios, not prices.'],
          }),
    ]
  },
  judgment: { evidence: 'Which alternatives were compared, by whom, and how they came out.', replacesMissing: true },
})
