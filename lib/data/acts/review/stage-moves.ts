import { countOf } from '@/lib/engine/units'
import 'server-only'
import type { AdvanceInput, SendBackInput, WithdrawInput } from '@/lib/inputs'
import { ACT_MEANINGS, type Decision, decideTransition, type MoveRefusal, type MoveRequest } from '@/lib/review'
import { voidSignature } from '../../consequences/voided-signatures'
import { type WriteContext, write } from '../../consequences/write'
import { type Actor, requireRevisionInView } from '../../records/authorization'
import { listChangesSince } from '../../records/changes-since'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { makeSnapshot } from '../../records/snapshot'
import { NotAllowedError, refuseBlocked, refuseClash, refuseField, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'
import type { ConfirmedBy } from '../access/confirmation'
import { writeConfirmed } from '../access/confirmed-write'

export interface MovedRevision {
  readonly stage: string
  readonly version: number
}

/** To the next stage, when nothing blocks. The last step, release, is a function of its own: it builds the package. */
export function advanceRevision(actor: Actor, input: AdvanceInput): Promise<ActResult<MovedRevision>> {
  return write(actor, 'advance-revision', input, (context) =>
    move(context, input, { move: 'advance', reason: input.note ?? '' }),
  )
}

/** Back one stage, with a reason. Signatures are voided. */
export function sendBackRevision(actor: Actor, input: SendBackInput): Promise<ActResult<MovedRevision>> {
  return write(actor, 'send-back-revision', input, (context) =>
    move(context, input, { move: 'send-back', reason: input.reason }),
  )
}

/** Off the path, with a reason, for good. The revision stays readable. */
export function withdrawRevision(actor: Actor, input: WithdrawInput): Promise<ActResult<MovedRevision>> {
  const door = { act: 'withdraw-revision', action: 'withdraw-revision' } as const
  return writeConfirmed(actor, door, input, (context, confirmedBy) =>
    move(context, input, { move: 'withdraw', reason: input.reason }, confirmedBy),
  )
}

async function move(
  context: WriteContext,
  input: { readonly revisionId: string; readonly seenVersion: number },
  request: MoveRequest,
  confirmedBy?: ConfirmedBy,
): Promise<MovedRevision> {
  const { tx, rights } = context
  const { revision, fabricatorCompanyId } = await requireRevisionInView(tx, rights, input.revisionId)
  const loaded = await loadRevision(tx, revision.id)
  const change = unwrap(decideTransition(makeSnapshot(loaded, null).snapshot, rights, request))
  requireRevisionSeen(loaded, input.seenVersion, fabricatorCompanyId)
  if (change.isRelease) refuseClash('A revision is released by building its package.')
  for (const { signatureId, reason } of change.voids) {
    await voidSignature(context, loaded, { signatureId, reason, changes: [], by: 'application' })
  }
  const { version } = await storeMove(context, loaded, change, confirmedBy)
  return { stage: change.to, version }
}

/** Sets the stage, notes the move and writes it into the trail. */
export async function storeMove(
  { tx, rights, at, record }: WriteContext,
  { record: revision }: LoadedRevision,
  { from, to, reason }: { readonly from: string; readonly to: string; readonly reason: string },
  confirmedBy?: ConfirmedBy,
): Promise<{ version: number }> {
  const { version } = await tx.revision.update({
    where: { id: revision.id },
    data: { stage: to, stageSince: at, version: { increment: 1 } },
    select: { version: true },
  })
  await tx.stageMove.create({
    data: { revisionId: revision.id, fromStage: from, toStage: to, reason, movedById: rights.userId, movedAt: at },
  })
  await record({
    action: 'stage-moved',
    subject: { kind: 'revision', id: revision.id },
    projectId: revision.projectId,
    revisionId: revision.id,
    details: {
      from,
      to,
      reason,
      ...(confirmedBy === undefined ? {} : { meaning: ACT_MEANINGS['withdraw-revision'], confirmedBy }),
    },
  })
  return { version }
}

/** A move, a signature and a release rest on what the person saw. */
export function requireRevisionSeen(
  loaded: LoadedRevision,
  seenVersion: number,
  fabricatorCompanyId: string | null,
): void {
  const { version } = loaded.record
  if (version === seenVersion) return
  refuseStale(seenVersion, version, listChangesSince(loaded, seenVersion, fabricatorCompanyId), 'the revision')
}

/** What the review's rules decided, or their refusal in the data layer's terms. */
export function unwrap<T>(decision: Decision<T>): T {
  if (decision.ok) return decision.value
  return refuseDecision(decision.refusal)
}

function refuseDecision(refusal: MoveRefusal): never {
  switch (refusal.kind) {
    case 'blocked':
      return refuseBlocked(refusal.blockers, `${countOf(refusal.blockers.length, 'item blocks', 'items block')} this.`)
    case 'illegal':
      return refuseClash(`${refusal.sentence}.`)
    case 'reason-missing':
      return refuseField('reason', 'missing', refusal.sentence)
    case 'not-allowed':
      throw new NotAllowedError('move, sign or release this revision')
  }
}
