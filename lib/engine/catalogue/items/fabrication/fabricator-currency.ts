import { DESIGN_PLACE } from '../../checks'
import { decide, makeNoneAllowed, makeSourceLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const fabricatorCurrency = defineItem({
  id: 'fabricator-currency',
  section: 'fabrication',
  severity: 'major',
  question: 'Has the fabricator seen the design as it now stands?',
  titles: {
    meets: 'The fabricator has seen the present design',
    fails: 'The fabricator has not seen the present design',
  },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief', 'materials', 'construction', 'bends', 'features', 'artwork'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'facts.changesSinceFabricatorLooked', worse: 'larger' }],
  check: ({ facts }) => {
    const { changesSinceFabricatorLooked = null, daysSinceFabricatorLooked = null, fabricatorsInvited = null } = facts
    // Nobody can have seen it where it was shown to nobody, whatever a person says.
    if (fabricatorsInvited === 0) {
      return [
        {
          ...decide({
            value: 0,
            limit: makeSourceLimit({
              key: 'fabricatorsInvitedCount',
              value: 1,
              unit: 'count',
              sense: 'at-least',
              sourceKey: 'commonPractice',
            }),
            places: [DESIGN_PLACE],
            what: 'fabricators with whom the revision is shared',
            equation: 'count of shares',
          }),
          summary: 'The revision is shared with no fabricator.',
        },
      ]
    }
    return [
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
    ]
  },
  judgment: { evidence: 'When the fabricator last looked, and at which revision.', replacesMissing: true },
})
