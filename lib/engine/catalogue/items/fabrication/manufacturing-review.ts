import type { EvaluationContext } from '../../../context'
import type { MissingInput, Outcome } from '../../../results'
import { countDays } from '../../calendar'
import { BRIEF_PLACE } from '../../checks'
import { decide, makeNoneAllowed, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'

export const manufacturingReview = defineItem({
  id: 'manufacturing-review',
  section: 'fabrication',
  severity: 'major',
  question: 'Is the manufacturing review held before the layout freezes?',
  titles: { meets: 'The review comes before the freeze', fails: 'The layout freezes before the review' },
  appliesTo: { needs: [], says: 'every design' },
  limits: ['reviewBeforeFreezeDays'],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief.manufacturingReviewDate', 'brief.layoutFreezeDate'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) => {
    const { manufacturingReviewDate, layoutFreezeDate } = context.design.brief
    if (manufacturingReviewDate === null || layoutFreezeDate === null) {
      const missing: MissingInput[] = []
      if (manufacturingReviewDate === null) {
        missing.push({ path: ['brief', 'manufacturingReviewDate'], label: 'date of the manufacturing review' })
      }
      if (layoutFreezeDate === null) {
        missing.push({ path: ['brief', 'layoutFreezeDate'], label: 'date of the layout freeze' })
      }
      return [notComputedFrom(missing, [BRIEF_PLACE])]
    }
    const planned = decide({
      value: countDays(manufacturingReviewDate, layoutFreezeDate),
      limit: context.getLimit('reviewBeforeFreezeDays'),
      places: [BRIEF_PLACE],
      what: 'from review to freeze',
      equation: 'layout freeze - manufacturing review',
      isTyped: true,
      remark: `Review ${manufacturingReviewDate}, freeze ${layoutFreezeDate}.`,
    })
    return [planned, ...checkHeld(context, manufacturingReviewDate)]
  },
})

/** A planned day is no review: it is held once a fabricator has looked, and a day that has passed without a look is one that was not. */
function checkHeld({ facts }: EvaluationContext, manufacturingReviewDate: string): Outcome[] {
  const { evaluatedOn, daysSinceFabricatorLooked } = facts
  if (typeof daysSinceFabricatorLooked === 'number') return []
  const isOverdue = evaluatedOn !== undefined && countDays(manufacturingReviewDate, evaluatedOn) > 0
  if (daysSinceFabricatorLooked === undefined || !isOverdue) {
    return [
      {
        ...notComputed(['facts', 'daysSinceFabricatorLooked'], 'the first look of a fabricator', [BRIEF_PLACE]),
        rests: 'typed',
        summary: `Not computed: the review is planned for ${manufacturingReviewDate}, and no fabricator has looked yet.`,
      },
    ]
  }
  return [
    {
      ...decide({
        value: 1,
        limit: makeNoneAllowed('reviewsOverdueCount', 'commonPractice'),
        places: [BRIEF_PLACE],
        what: 'reviews that were not held',
        equation: 'day of the review against the first look by a fabricator',
      }),
      summary: `The review was planned for ${manufacturingReviewDate}, and no fabricator has looked since.`,
    },
  ]
}
