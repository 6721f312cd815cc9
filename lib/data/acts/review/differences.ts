import 'server-only'
import type { AcknowledgeDifferenceInput, TakeUpDifferenceInput } from '@/lib/inputs'
import { listDifferences } from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { write } from '../../consequences/write'
import { type Actor, requireRevision, requireRevisionInView } from '../../records/authorization'
import { loadRevision } from '../../records/loaded-revision'
import { makeSnapshot } from '../../records/snapshot'
import { NotFoundError, refuseClash, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'
import { requireRevisionSeen } from './stage-moves'

/**
 * Words and numbers differ here, and that may stay so, says a lead or quality who did not say the words. It covers these words and numbers and no
 * others, and it is part of what is signed.
 */
export function acknowledgeDifference(
  actor: Actor,
  input: AcknowledgeDifferenceInput,
): Promise<ActResult<{ acknowledgementId: string }>> {
  return write(actor, 'acknowledge-difference', input, async (context) => {
    const { tx, rights, at, record } = context
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'difference:let-stand')
    const loaded = await loadRevision(tx, revision.id)
    requireRevisionSeen(loaded, input.seenVersion, null)
    const difference = listDifferences(makeSnapshot(loaded, null).snapshot).find(({ key }) => key === input.key)
    if (difference === undefined) refuseField('key', 'unknown', 'names a difference that is no longer there')
    if (difference.acknowledged !== null) refuseClash(`${difference.acknowledged.byName} has already let it stand.`)
    if (difference.saidById === rights.userId) {
      refuseClash('You wrote it yourself: another lead, or quality, decides whether it may stand. You can correct it.')
    }
    const { fact, said, against } = difference
    const { value } = await changeContent(context, loaded, 'statement', async () => {
      const row = await tx.differenceAcknowledgement.create({
        data: {
          revisionId: revision.id,
          differenceKey: difference.key,
          fact,
          said,
          against,
          reason: input.reason,
          acknowledgedById: rights.userId,
          acknowledgedAt: at,
        },
      })
      await record({
        action: 'difference-let-stand',
        subject: { kind: 'difference', id: row.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        details: { fact, said, against, reason: input.reason },
      })
      return row.id
    })
    return { acknowledgementId: value }
  })
}

/** It may not stay so after all. */
export function takeUpDifference(actor: Actor, input: TakeUpDifferenceInput): Promise<ActResult<null>> {
  return write(actor, 'take-up-difference', input, async (context) => {
    const { tx, rights, at, record } = context
    const row = await tx.differenceAcknowledgement.findUnique({ where: { id: input.acknowledgementId } })
    if (row === null) throw new NotFoundError('difference')
    await requireRevisionInView(tx, rights, row.revisionId, 'difference')
    const { revision } = await requireRevision(tx, rights, row.revisionId, 'difference:let-stand')
    if (row.withdrawnAt !== null) refuseClash('It was already taken up again.')
    await changeContent(context, await loadRevision(tx, revision.id), 'statement', async () => {
      await tx.differenceAcknowledgement.update({
        where: { id: row.id },
        data: { withdrawnById: rights.userId, withdrawnAt: at },
      })
      await record({
        action: 'difference-taken-up',
        subject: { kind: 'difference', id: row.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        details: { fact: row.fact, said: row.said, against: row.against, reason: input.reason },
      })
    })
    return null
  })
}
