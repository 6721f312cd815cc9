import { defineItem } from '../../define-item'
import { askFor, findUnstated, listTerms, makeTermOutcome } from '../../terms'

const CHANGES = ['materialChange', 'processChange', 'siteChange', 'panelChange'] as const

export const changeControl = defineItem({
  id: 'change-control',
  section: 'fabrication',
  severity: 'major',
  question: 'Is it agreed which changes of material, process, site or panel come back for approval?',
  titles: { meets: 'Changes are agreed', fails: 'Materials may change without notice' },
  appliesTo: { needs: ['layers'], says: 'every design' },
  limits: [],
  sourceKeys: ['ownChoice'],
  restsOn: [
    'brief.agreements.materialChange',
    'brief.agreements.processChange',
    'brief.agreements.siteChange',
    'brief.agreements.panelChange',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['lead', 'fabricator'],
  monotone: [],
  check: (context) => {
    const missing = findUnstated(context, 'agreements', CHANGES)
    if (missing.length > 0) return askFor(missing)
    return [
      context.design.brief.agreements.materialChange === 'free'
        ? makeTermOutcome(
            'fails',
            'Materials may change at any time: what was computed and signed is then not what is built.',
            'ownChoice',
          )
        : makeTermOutcome('meets', `Agreed: ${listTerms(context, 'agreements', CHANGES)}.`, 'ownChoice'),
    ]
  },
})
