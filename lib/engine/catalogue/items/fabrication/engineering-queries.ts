import { DESIGN_PLACE } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const engineeringQueries = defineItem({
  id: 'engineering-queries',
  section: 'fabrication',
  severity: 'blocking',
  question: 'Are all engineering queries answered?',
  titles: { meets: 'No engineering query is open', fails: 'An engineering query or must-change is open' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'facts.openEngineeringQueries', worse: 'larger' },
    { path: 'facts.openMustChangeThreads', worse: 'larger' },
  ],
  check: ({ facts: { openEngineeringQueries, openMustChangeThreads = 0, daysSinceFabricatorLooked = null } }) => {
    if (openEngineeringQueries === undefined) {
      return [notComputed(['facts', 'openEngineeringQueries'], 'count of open engineering queries', [DESIGN_PLACE])]
    }
    const open = openEngineeringQueries + openMustChangeThreads
    // Before anybody looked there is nobody who could have asked: that none is open says nothing.
    if (open === 0 && daysSinceFabricatorLooked === null) {
      return [notComputed(['facts', 'daysSinceFabricatorLooked'], 'a first look by the fabricator', [DESIGN_PLACE])]
    }
    return [
      decide({
        value: open,
        limit: makeNoneAllowed('openQueriesCount', 'commonPractice'),
        places: [DESIGN_PLACE],
        what: 'open queries and must-changes',
        equation: 'count of open threads',
      }),
    ]
  },
  judgment: { evidence: 'The list of queries with their answers.', replacesMissing: true },
})
