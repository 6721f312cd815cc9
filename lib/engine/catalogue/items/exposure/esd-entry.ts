import { notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, findUnstated, listTerms, makeTermOutcome } from '../../terms'

export const esdEntry = defineItem({
  id: 'esd-entry',
  section: 'fabrication',
  severity: 'minor',
  question: 'Where can a discharge enter, and where does it go?',
  titles: { meets: 'A discharge has a path', fails: 'A discharge has nowhere to go' },
  appliesTo: { needs: ['conductor-layers'], says: 'parts that people touch or plug' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief.exposure.dischargeEntry', 'brief.exposure.dischargePath', 'features.conductors'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  onlyWithProfile: true,
  monotone: [],
  check: (context) => {
    const { dischargeEntry, dischargePath } = context.design.brief.exposure
    if (dischargeEntry === null) return askFor(findUnstated(context, 'exposure', ['dischargeEntry']))
    if (dischargeEntry === 'nowhere') return [notApplicable('the part is enclosed, so that no discharge reaches it')]
    if (dischargePath === null) return askFor(findUnstated(context, 'exposure', ['dischargePath']))
    const said = listTerms(context, 'exposure', ['dischargeEntry', 'dischargePath'])
    return [
      dischargePath === 'nothing'
        ? makeTermOutcome('fails', `A discharge finds a conductor: ${said}.`, 'commonPractice')
        : makeTermOutcome('meets', `Stated: ${said}.`, 'commonPractice'),
    ]
  },
  judgment: { evidence: 'The layer with the guard or ground path, from the entry to where it ends.' },
})
