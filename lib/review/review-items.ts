import type { ReviewItem } from './snapshot'

/** Severities at which a person's concern keeps a revision from release until it is waived. */
const SEVERITIES_TO_WAIVE: readonly string[] = ['blocking', 'major']

/** What the review's rules need of a catalogue item. */
export function makeReviewItem(definition: Omit<ReviewItem, 'concernNeedsWaiver'>): ReviewItem {
  const { id, section, question, severity, decidedWhen, answeredBy, becauseOf } = definition
  return {
    id,
    section,
    question,
    severity,
    decidedWhen,
    answeredBy,
    concernNeedsWaiver: SEVERITIES_TO_WAIVE.includes(severity),
    ...(becauseOf === undefined ? {} : { becauseOf }),
  }
}
