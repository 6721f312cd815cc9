import { notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, checkSeen, findUnstated } from '../../terms'

export const lessons = defineItem({
  id: 'lessons',
  section: 'fabrication',
  severity: 'minor',
  question: 'Were the findings on the part before this one gone through?',
  titles: { meets: 'Earlier findings were gone through', fails: 'Earlier findings were not gone through' },
  appliesTo: { needs: [], says: 'designs with a part before them' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief.agreements.hasPredecessor', 'brief.agreements.lessonsReviewed'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [{ path: 'brief.agreements.lessonsReviewed', worse: 'no' }],
  check: (context) => {
    const { hasPredecessor } = context.design.brief.agreements
    if (hasPredecessor === null) return askFor(findUnstated(context, 'agreements', ['hasPredecessor']))
    if (!hasPredecessor) return [notApplicable('there was no part before this one')]
    return [
      checkSeen(context, 'agreements', 'lessonsReviewed', {
        whenRight: 'Findings on the part before were gone through.',
        whenWrong: 'Findings on the part before were not gone through.',
        sourceKey: 'commonPractice',
      }),
    ]
  },
})
