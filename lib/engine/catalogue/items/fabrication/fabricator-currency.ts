import { DESIGN_PLACE } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const fabricatorCurrency = defineItem({
  id: 'fabricator-currency',
  section: 'fabrication',
  severity: 'major',
  question: 'Has the fabricator seen the design as it now stands?',
  titles: {
    meets: 'The fabricator has seen the present design',
    fails: 'The design changed since the fabricator looked',
  },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['commonPractice'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  check: ({ facts: { changesSinceFabricatorLooked = null, daysSinceFabricatorLooked = null } }) => [
    changesSinceFabricatorLooked === null
      ? notComputed(['facts', 'changesSinceFabricatorLooked'], 'a first look by the fabricator', [DESIGN_PLACE])
      : decide({
          value: changesSinceFabricatorLooked,
          limit: makeNoneAllowed('unseenChangesCount', 'commonPractice'),
          places: [DESIGN_PLACE],
          what: 'changes that the fabricator has not seen',
          equation: 'count of changed fields',
          remark: daysSinceFabricatorLooked === null ? undefined : `Last look ${daysSinceFabricatorLooked} days ago.`,
        }),
  ],
  judgment: { evidence: 'When the fabricator last looked, and at which revision.', replacesMissing: true },
})
