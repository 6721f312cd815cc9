import {
  countRequiredSignatures,
  getWaiverRule,
  listPolicyRows,
  PEOPLE_WHO_SIGN,
  type SignOffPolicy,
  USUAL_SIGN_OFF_POLICY,
} from './sign-off-policy'
import type { ReviewItem, ReviewSnapshot, Waiver } from './snapshot'

/**
 * The policy that is asked: the pinned one; where none is pinned, the usual one, which is strict. Profiles of the review may want more people to
 * sign than it does, never fewer.
 */
export function getSignOffPolicy({ signOffPolicy, template }: PolicyHolder): SignOffPolicy {
  const rules = signOffPolicy?.rules ?? USUAL_SIGN_OFF_POLICY
  const wanted = (template?.profiles ?? []).map(({ requiredSignatures = 1 }) => requiredSignatures)
  return { ...rules, requiredSignatures: Math.max(rules.requiredSignatures, ...wanted) }
}

type PolicyHolder = Pick<ReviewSnapshot, 'signOffPolicy'> & Partial<Pick<ReviewSnapshot, 'template'>>

/** Names of the profiles that want as many signatures as are asked for, where the project's policy wants fewer. */
export function listProfilesBehindSignatures({ signOffPolicy, template }: PolicyHolder): string[] {
  const asked = countRequiredSignatures(getSignOffPolicy({ signOffPolicy, template }))
  if (countRequiredSignatures(signOffPolicy?.rules ?? USUAL_SIGN_OFF_POLICY) >= asked) return []
  return (template?.profiles ?? [])
    .filter(({ requiredSignatures }) => requiredSignatures === asked)
    .map(({ name }) => name)
}

/** The policy as every exit prints it, with the profiles that ask for more than the project does. */
export function listReviewPolicyRows(holder: PolicyHolder): ReturnType<typeof listPolicyRows> {
  const behind = listProfilesBehindSignatures(holder)
  return listPolicyRows(getSignOffPolicy(holder)).map((row) =>
    row.label === PEOPLE_WHO_SIGN && behind.length > 0
      ? { ...row, words: `${row.words}, required by profile ${behind.join(', ')}` }
      : row,
  )
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
    return 'the person who answered the item cannot approve its waiver'
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
