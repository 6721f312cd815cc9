import 'server-only'
import {
  comparePolicies,
  isAllowed,
  isAuthor,
  isOpenStage,
  listDifferences,
  listLoosenedUses,
  listReviewPolicyRows,
  listReviews,
  type ReviewSnapshot,
  type RevisionSubject,
} from '@/lib/review'
import { mayOnRevision, type PersonRights } from '../records/authorization'
import type { LoadedRevision } from '../records/loaded-revision'
import { readProjectPolicy } from '../records/sign-off-policy-record'
import type { SignOffView } from '../views'

/** Who made, reviewed and approves it, as the person asking sees it. */
export function makeSignOffView(
  loaded: LoadedRevision,
  snapshot: ReviewSnapshot,
  rights: PersonRights,
  subject: RevisionSubject,
): SignOffView {
  const counting = new Set(listReviews(snapshot).map(({ id }) => id))
  const mayReview = mayOnRevision(rights, 'review:declare', subject)
  const { signOffPolicy } = snapshot
  const mayLetStand = isAllowed(rights, 'difference:let-stand', subject)
  return {
    authors: snapshot.authors,
    reviews: snapshot.reviews.map(({ id, userId, name, role, note, madeAt, withdrawnAt }) => ({
      id,
      name,
      role,
      note,
      madeAt,
      counts: counting.has(id),
      isWithdrawn: withdrawnAt !== null,
      mayWithdraw: mayReview && userId === rights.userId && withdrawnAt === null,
    })),
    whyNoReview:
      mayReview && isAuthor(snapshot, rights.userId)
        ? 'You made or changed the design or the artwork: somebody who is not an author must review it.'
        : '',
    policy: signOffPolicy === null ? null : { version: signOffPolicy.version, rows: listReviewPolicyRows(snapshot) },
    loosenedUses: listLoosenedUses(snapshot, loaded.record.packages[0]?.releasedById ?? null),
    toFollow: isOpenStage(subject.stage) ? findPolicyToFollow(loaded, snapshot) : null,
    mayFollow: isAllowed(rights, 'policy:follow', subject),
    differences: listDifferences(snapshot).map((one) => ({
      ...one,
      mayLetStand: mayLetStand && one.acknowledged === null && one.saidById !== rights.userId,
      mayTakeUp: mayLetStand && one.acknowledged !== null,
      acknowledgementId: snapshot.acknowledgements.find(({ key }) => key === one.key)?.id ?? null,
    })),
  }
}

function findPolicyToFollow(loaded: LoadedRevision, { signOffPolicy }: ReviewSnapshot): SignOffView['toFollow'] {
  const project = readProjectPolicy(loaded.record.project, loaded.workspace.settings)
  if (signOffPolicy === null) return { version: project.version, changes: [] }
  const changes = comparePolicies(signOffPolicy.rules, project.rules)
  return changes.length === 0 ? null : { version: project.version, changes }
}
