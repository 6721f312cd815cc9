import { notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, findUnstated, listTerms, makeTermOutcome } from '../../terms'

export const pullLoad = defineItem({
  id: 'pull-load',
  section: 'fabrication',
  severity: 'minor',
  question: 'Who pulls on the part, where and how hard, and is there a tab or hole for it?',
  titles: {
    meets: 'The part can be pulled where it is meant to be',
    fails: 'Nothing on the part is made to be pulled',
  },
  appliesTo: { needs: ['layers'], says: 'parts that are pulled in assembly or service' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief.exposure.pullForceNewton', 'brief.exposure.pullFeature'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  onlyWithProfile: true,
  monotone: [],
  check: (context) => {
    const { pullForceNewton, pullFeature } = context.design.brief.exposure
    if (pullForceNewton === null) return askFor(findUnstated(context, 'exposure', ['pullForceNewton']))
    if (pullForceNewton === 0) return [notApplicable('nobody pulls the part')]
    if (pullFeature === null) return askFor(findUnstated(context, 'exposure', ['pullFeature']))
    const said = listTerms(context, 'exposure', ['pullForceNewton', 'pullFeature'])
    return [
      pullFeature === 'nothing'
        ? makeTermOutcome('fails', `The film itself is pulled: ${said}.`, 'commonPractice')
        : makeTermOutcome('meets', `Stated: ${said}.`, 'commonPractice'),
    ]
  },
})
