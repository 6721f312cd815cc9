import { listDifferences } from './differences'
import { USUAL_SIGN_OFF_POLICY } from './sign-off-policy'
import { hashDeclaredContent, listLiveSignatures } from './signed-content'
import type { Author, ReviewSnapshot, ReviewStatement, Signature } from './snapshot'
import { explainDependentWaiver, getSignOffPolicy, isAuthor } from './waiver-independence'

/**
 * Who made the content, who reviewed it and who approves it. A second pair of eyes is somebody of the company who did not
 * make what they look at: a remark of a fabricator, or a typo that was put right, is none.
 */

/** `Tomas Ebbersund (design, artwork)` */
export function describeAuthor({ name, parts }: Author): string {
  return `${name} (${parts.join(', ')})`
}

/** Statements on the present design and artwork, by people who are no authors of it. */
export function listReviews(snapshot: ReviewSnapshot): ReviewStatement[] {
  const standing = snapshot.reviews.filter(({ withdrawnAt }) => withdrawnAt === null)
  if (standing.length === 0) return []
  const contentHash = hashDeclaredContent(snapshot)
  return standing.filter((review) => review.contentHash === contentHash && !isAuthor(snapshot, review.userId))
}

/** Why the content does not count as reviewed; empty where it does. */
export function explainMissingReview(snapshot: ReviewSnapshot): string {
  const { review: rule } = getSignOffPolicy(snapshot)
  if (rule === 'none') return ''
  const reviews = listReviews(snapshot)
  if (reviews.some(({ role }) => rule === 'no-author' || role === 'quality')) return ''
  const who = rule === 'quality' ? 'Someone in the role quality' : 'Someone of the team'
  return `${who} who is not an author of design or artwork must declare the present content reviewed`
}

/** Signatures that count as approval: of people who are no authors, and of authors as far as the policy lets them sign. */
export function listApprovals(snapshot: ReviewSnapshot): Signature[] {
  const { authorSigns } = getSignOffPolicy(snapshot)
  const live = listLiveSignatures(snapshot)
  return authorSigns === 'no' ? live.filter(({ userId }) => !isAuthor(snapshot, userId)) : live
}

/**
 * Where a policy looser than usual was made use of, a sentence each: printed with whatever was released by it.
 * @param releasedById  who released it; null before that
 */
export function listLoosenedUses(snapshot: ReviewSnapshot, releasedById: string | null): string[] {
  if (snapshot.signOffPolicy === null) return []
  const uses: string[] = []
  for (const { userId, name } of listLiveSignatures(snapshot)) {
    if (isAuthor(snapshot, userId)) uses.push(`${name}, an author of the content, signed it`)
  }
  if (getSignOffPolicy(snapshot).review === 'none' && listReviews(snapshot).length === 0) {
    uses.push('no review by someone other than the authors was required')
  }
  if (getSignOffPolicy(snapshot).differences === 'listed') {
    const left = listDifferences(snapshot).filter((one) => one.acknowledged === null && !one.isDecidedInChecklist)
    if (left.length > 0)
      uses.push(
        `words differ from numbers in ${left.length === 1 ? 'one place' : `${left.length} places`}, and nobody had to let it stand`,
      )
  }
  if (releasedById !== null && isAuthor(snapshot, releasedById)) uses.push('an author of the content released it')
  const usual = { ...snapshot, signOffPolicy: { version: 0, rules: USUAL_SIGN_OFF_POLICY } }
  for (const waiver of snapshot.waivers) {
    const item = snapshot.items.find(({ id }) => id === waiver.itemId)
    if (item === undefined || explainDependentWaiver(snapshot, item, waiver) !== '') continue
    const why = explainDependentWaiver(usual, item, waiver)
    if (why !== '') uses.push(`waiver of "${item.question}": ${why.replace(' does not count', ' was allowed')}`)
  }
  return uses
}
