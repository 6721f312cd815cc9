import type { Blocker } from './blocker'
import { explainMissingReview, listApprovals } from './independence'
import { countRequiredSignatures } from './sign-off-policy'
import { listLiveSignatures } from './signed-content'
import type { ReviewSnapshot } from './snapshot'
import { getSignOffPolicy, isAuthor, listProfilesBehindSignatures } from './waiver-independence'

const SIGNATURES = { tab: 'sign-off', id: 'signatures' } as const

/** What is missing before anybody approves: the policy itself, and the review that it asks for. */
export function findIndependenceBlockers(snapshot: ReviewSnapshot): Blocker[] {
  if (snapshot.signOffPolicy === null) {
    return [
      {
        code: 'policy-missing',
        sentence:
          'The review began before there were sign-off policies: a lead must put it under the policy of the project',
        target: { tab: 'sign-off', id: 'policy' },
      },
    ]
  }
  const sentence = explainMissingReview(snapshot)
  return sentence === '' ? [] : [{ code: 'review-missing', sentence, target: { tab: 'sign-off', id: 'review' } }]
}

/** What keeps this person from signing because they made what is signed. */
export function findAuthorSigning(snapshot: ReviewSnapshot, userId: string): Blocker[] {
  if (getSignOffPolicy(snapshot).authorSigns !== 'no' || !isAuthor(snapshot, userId)) return []
  return [
    {
      code: 'author-signs',
      sentence: 'You made or changed the design or the artwork: somebody who is not an author must sign',
      target: SIGNATURES,
    },
  ]
}

/** What keeps this person from releasing because they made what is released. */
export function findAuthorReleasing(snapshot: ReviewSnapshot, userId: string): Blocker[] {
  if (getSignOffPolicy(snapshot).authorReleases === 'yes' || !isAuthor(snapshot, userId)) return []
  return [
    {
      code: 'author-releases',
      sentence: 'You made or changed the design or the artwork: a lead who is not an author must release it',
      target: { tab: 'sign-off', id: 'release' },
    },
  ]
}

/** Signatures that are missing for release, in number, in capacity and in independence. */
export function findApprovalBlockers(snapshot: ReviewSnapshot): Blocker[] {
  const blockers: Blocker[] = []
  const policy = getSignOffPolicy(snapshot)
  const approvals = listApprovals(snapshot)
  const refused = listLiveSignatures(snapshot).filter(({ id }) => !approvals.some((approval) => approval.id === id))
  for (const { name } of refused) {
    blockers.push({
      code: 'author-signs',
      sentence: `The signature of ${name} does not count: ${name} is an author of the design or the artwork`,
      target: SIGNATURES,
    })
  }
  const isOfAuthors = approvals.length > 0 && approvals.every(({ userId }) => isAuthor(snapshot, userId))
  if (policy.authorSigns === 'beside' && isOfAuthors) {
    blockers.push({
      code: 'author-signs',
      sentence:
        'Only authors of the design or the artwork have signed: somebody who is not an author must sign as well',
      target: SIGNATURES,
    })
  }
  const missing = policy.requiredCapacities.filter((name) => !approvals.some(({ capacity }) => capacity === name))
  for (const name of missing) {
    blockers.push({
      code: 'signature-missing',
      sentence: `No valid signature as ${name} on the current content`,
      target: SIGNATURES,
    })
  }
  const signers = new Set(approvals.map(({ userId }) => userId)).size
  const required = countRequiredSignatures(policy)
  // Capacities that are missing say more than their number.
  if (signers + missing.length < required) {
    blockers.push({
      code: 'signature-missing',
      sentence:
        required === 1
          ? 'No valid signature on the current content'
          : `${signers} of ${required} required signatures on the current content${nameProfiles(snapshot)}`,
      target: SIGNATURES,
    })
  }
  return blockers
}

/** ` (required by profile Medical)`, where the project's policy wants fewer. */
function nameProfiles(snapshot: ReviewSnapshot): string {
  const names = listProfilesBehindSignatures(snapshot)
  return names.length === 0 ? '' : ` (required by profile ${names.join(', ')})`
}
