import type { ReviewSnapshot } from '../snapshot'
import type { FoundDifference } from './found'

/** What was planned for a day to come has not been done when somebody signs; what was needed by a day gone by is late. */
export function compareDates({ design, today }: ReviewSnapshot): FoundDifference[] {
  const { manufacturingReviewDate, layoutFreezeDate, needDate } = design.brief
  const target = (id: string) => ({ tab: 'brief' as const, id })
  const found: FoundDifference[] = []
  if (manufacturingReviewDate !== null && manufacturingReviewDate > today) {
    found.push({
      fact: 'Day of the manufacturing review',
      said: `${manufacturingReviewDate} in the brief`,
      against: 'the review is signed off before that day',
      target: target('manufacturingReviewDate'),
      saidById: '',
    })
  }
  if (layoutFreezeDate !== null && layoutFreezeDate > today) {
    found.push({
      fact: 'Day of the layout freeze',
      said: `${layoutFreezeDate} in the brief`,
      against: 'the layout is signed before that day',
      target: target('layoutFreezeDate'),
      saidById: '',
    })
  }
  if (needDate !== null && needDate < today) {
    found.push({
      fact: 'Date of need',
      said: `${needDate} in the brief`,
      against: 'that date has passed, and the part is not released',
      target: target('needDate'),
      saidById: '',
    })
  }
  return found
}
