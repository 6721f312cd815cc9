import { getWaiverRule, type SignOffPolicy, USUAL_SIGN_OFF_POLICY } from './sign-off-policy'
import type { ReviewItem, ReviewSnapshot, Waiver } from './snapshot'

/** The policy that is asked: the pinned one; where none is pinned, the usual one, which is strict. */
export function getSignOffPolicy({ signOffPolicy }: Pick<ReviewSnapshot, 'signOffPolicy'>): SignOffPolicy {
  return signOffPolicy?.rules ?? USUAL_SIGN_OFF_POLICY
}

export function isAuthor({ authors }: Pick<ReviewSnapshot, 'authors'>, userId: string): boolean {
  return authors.some((author) => author.userId === userId)
}

interface WaiverDecision {
  readonly proposedBy: string
  readonly userId: string
  readonly role: string
}

/** Why this person may not approve a waiver of this item; empty where the policy lets them. */
export function explainNoApproval(
  snapshot: Pick<ReviewSnapshot, 'signOffPolicy' | 'authors' | 'answers'>,
  item: Pick<ReviewItem, 'id' | 'severity'>,
  { proposedBy, userId, role }: WaiverDecision,
): string {
  const rule = getWaiverRule(getSignOffPolicy(snapshot), item.severity)
  if (rule === 'anyone') return ''
  if (proposedBy === userId) return 'the proposer of a waiver cannot approve it'
  const answer = snapshot.answers.find(({ itemId }) => itemId === item.id)
  if (answer?.answeredBy === userId && answer.state !== 'open') {
    return 'whoever answered the item cannot approve its waiver'
  }
  if (rule === 'second-person') return ''
  if (isAuthor(snapshot, userId)) return 'an author of design or artwork cannot approve a waiver of this severity'
  if (rule === 'quality' && role !== 'quality') return 'a waiver of this severity is approved by quality alone'
  return ''
}

/**
 * Why an approved waiver does not count under the policy that the revision goes by; empty where it does. Asked again whenever
 * the revision is looked at: who approved may have become an author since, and the policy may have been tightened. Reviews
 * from before policies keep what was decided then.
 */
export function explainDependentWaiver(
  snapshot: Pick<ReviewSnapshot, 'signOffPolicy' | 'authors' | 'answers'>,
  item: Pick<ReviewItem, 'id' | 'severity'>,
  waiver: Waiver,
): string {
  if (snapshot.signOffPolicy === null || waiver.state !== 'approved' || waiver.decidedBy === null) return ''
  const { proposedBy, decidedBy: userId, decidedAsRole } = waiver
  const why = explainNoApproval(snapshot, item, { proposedBy, userId, role: decidedAsRole ?? '' })
  return why === '' ? '' : `the approval by ${waiver.decidedByName ?? 'somebody'} does not count: ${why}`
}
