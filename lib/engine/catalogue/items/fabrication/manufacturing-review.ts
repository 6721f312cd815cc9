import type { MissingInput } from '../../../results'
import { countDays } from '../../calendar'
import { BRIEF_PLACE } from '../../checks'
import { decide, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'

export const manufacturingReview = defineItem({
  id: 'manufacturing-review',
  section: 'fabrication',
  severity: 'major',
  question: 'Is the manufacturing review held before the layout freezes?',
  titles: { meets: 'The review comes before the freeze', fails: 'The layout freezes before the review' },
  appliesTo: { needs: [], says: 'every design' },
  limits: ['reviewBeforeFreezeDays'],
  sourceKeys: [],
  restsOn: ['brief.manufacturingReviewDate', 'brief.layoutFreezeDate'],
  decidedWhen: 'early',
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
    return [
      decide({
        value: countDays(manufacturingReviewDate, layoutFreezeDate),
        limit: context.getLimit('reviewBeforeFreezeDays'),
        places: [BRIEF_PLACE],
        what: 'from review to freeze',
        equation: 'layout freeze - manufacturing review',
        isTyped: true,
        remark: `Review ${manufacturingReviewDate}, freeze ${layoutFreezeDate}.`,
      }),
    ]
  },
})
