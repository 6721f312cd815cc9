import 'server-only'
import type { DeclareReviewedInput, WithdrawReviewInput } from '@/lib/inputs'
import { ACT_MEANINGS, hashDeclaredContent, isAuthor } from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { type Actor, getMembership, requireRevision, requireRevisionInView } from '../../records/authorization'
import { loadRevision } from '../../records/loaded-revision'
import { makeSnapshot } from '../../records/snapshot'
import { NotAllowedError, NotFoundError, refuseClash } from '../../store/errors'
import type { ActResult } from '../../views'
import { writeConfirmed } from '../access/confirmed-write'
import { requireRevisionSeen } from './stage-moves'

/**
 * Somebody of the company, who made nothing of it, says that they reviewed design and artwork as they stand. It counts until
 * either changes, or until the person becomes an author.
 */
export function declareReviewed(actor: Actor, input: DeclareReviewedInput): Promise<ActResult<{ reviewId: string }>> {
  const door = { act: 'declare-reviewed', action: 'declare-reviewed' } as const
  return writeConfirmed(actor, door, input, async (context, confirmedBy) => {
    const { tx, rights, at, record } = context
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'review:declare')
    const loaded = await loadRevision(tx, revision.id)
    requireRevisionSeen(loaded, input.seenVersion, null)
    const { snapshot } = makeSnapshot(loaded, null)
    if (isAuthor(snapshot, rights.userId)) {
      refuseClash('You made or changed the design or the artwork: somebody who is not an author must review it.')
    }
    const contentHash = hashDeclaredContent(snapshot)
    if (
      snapshot.reviews.some(
        (own) => own.userId === rights.userId && own.withdrawnAt === null && own.contentHash === contentHash,
      )
    ) {
      refuseClash('You have already declared this content reviewed.')
    }
    const { value: reviewId } = await changeContent(context, loaded, 'statement', async () => {
      const review = await tx.reviewStatement.create({
        data: {
          revisionId: revision.id,
          userId: rights.userId,
          userName: rights.name,
          role: getMembership(rights, revision.projectId)?.role ?? '',
          note: input.note,
          contentHash,
          madeAt: at,
        },
      })
      await record({
        action: 'declared-reviewed',
        subject: { kind: 'review', id: review.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        details: { note: input.note, contentHash, meaning: ACT_MEANINGS['declare-reviewed'], confirmedBy },
      })
      return review.id
    })
    return { reviewId }
  })
}

/** Its author can withdraw it, with a reason, until release. It stays readable. */
export function withdrawReview(actor: Actor, input: WithdrawReviewInput): Promise<ActResult<null>> {
  const door = { act: 'withdraw-review', action: 'withdraw-review' } as const
  return writeConfirmed(actor, door, input, async (context, confirmedBy) => {
    const { tx, rights, at, record } = context
    const row = await tx.reviewStatement.findUnique({ where: { id: input.reviewId } })
    if (row === null) throw new NotFoundError('review')
    const { revision } = await requireRevisionInView(tx, rights, row.revisionId, 'review')
    if (row.userId !== rights.userId) throw new NotAllowedError('withdraw a review that somebody else declared')
    await requireRevision(tx, rights, revision.id, 'review:declare')
    if (row.withdrawnAt !== null) refuseClash('This review was already withdrawn.')
    const loaded = await loadRevision(tx, revision.id)
    await changeContent(context, loaded, 'statement', async () => {
      await tx.reviewStatement.update({
        where: { id: row.id },
        data: { withdrawnAt: at, withdrawReason: input.reason },
      })
      await record({
        action: 'review-withdrawn',
        subject: { kind: 'review', id: row.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        details: { reason: input.reason, meaning: ACT_MEANINGS['withdraw-review'], confirmedBy },
      })
    })
    return null
  })
}
