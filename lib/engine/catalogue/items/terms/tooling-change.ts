import { defineItem } from '../../define-item'
import { askFor, checkSeen, findUnstated, makeTermOutcome } from '../../terms'

export const toolingChange = defineItem({
  id: 'tooling-change',
  section: 'fabrication',
  severity: 'minor',
  question: 'Do limits hold for the tool that cuts the series as well as for that of the prototype?',
  titles: { meets: 'Limits hold for the series tool', fails: 'Limits do not hold for the series tool' },
  appliesTo: { needs: ['layers'], says: 'every design' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'brief.agreements.prototypeTool',
    'brief.agreements.seriesTool',
    'brief.agreements.limitsHoldForSeries',
    'features.copperToOutlineMm',
    'features.outlineCorners',
    'features.slits',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'brief.agreements.limitsHoldForSeries', worse: 'no' }],
  check: (context) => {
    const missing = findUnstated(context, 'agreements', ['prototypeTool', 'seriesTool'])
    if (missing.length > 0) return askFor(missing)
    const { prototypeTool, seriesTool } = context.design.brief.agreements
    return [
      prototypeTool === seriesTool
        ? makeTermOutcome('meets', 'Prototype and series are cut by the same kind of tool.', 'commonPractice')
        : checkSeen(context, 'agreements', 'limitsHoldForSeries', {
            whenRight: 'The limits hold for the series tool too.',
            whenWrong: 'The limits do not hold for the series tool.',
            sourceKey: 'commonPractice',
          }),
    ]
  },
})
