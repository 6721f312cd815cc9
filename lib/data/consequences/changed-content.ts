import 'server-only'
import { ENGINE_VERSION } from '@/lib/engine'
import { isOpenStage } from '@/lib/review'
import { getFabricatorCompanyId, readStage } from '../records/authorization'
import { recordEvaluation } from '../records/evaluation'
import { type LoadedRevision, loadRevision, loadRevisionAgain } from '../records/loaded-revision'
import type { TransactionClient } from '../store/client'
import { putArtworkJob } from './artwork-job'
import { noteVerdictFlips } from './probing'
import { hasLiveSignature, voidSignatures } from './voided-signatures'
import type { WriteContext } from './write'

/** Parts of a revision's content whose change is remembered with its author. */
export type ContentPart = 'design' | 'answer' | 'artwork' | 'template' | 'policy'

export interface ContentChangeNote {
  readonly part: ContentPart
  /** What changed, a sentence each. */
  readonly summary: readonly string[]
}

export interface ChangedContent<T> {
  /** What the change returned. */
  readonly value: T
  readonly version: number
  readonly voidedSignatures: number
}

/**
 * Makes one change to what a signature covers, and all that follows from it: the revision's version goes up, the change
 * is noted with its author, results are recomputed and stored, signatures on other content are voided, each in the
 * trail. Runs inside the caller's transaction.
 *
 * @param before  the revision as the caller loaded it in this transaction
 * @param note  null for a change that is not an edit of the person's (a thread that opens or closes, a share); `statement`
 * where it is none and the engine reads nothing of it either
 */
export async function changeContent<T>(
  context: WriteContext,
  before: LoadedRevision,
  note: ContentChangeNote | null | 'statement',
  change: () => Promise<T>,
): Promise<ChangedContent<T>> {
  const { tx, rights, at } = context
  const { id: revisionId, projectId } = before.record
  const value = await change()
  const version = await raiseVersion(tx, revisionId)
  const edit = note === 'statement' ? null : note
  if (edit !== null) {
    await tx.edit.create({
      data: {
        revisionId,
        userId: rights.userId,
        companyId: getFabricatorCompanyId(rights, projectId),
        part: edit.part,
        version,
        summaryJson: JSON.stringify(edit.summary),
        at,
      },
    })
  }
  // A comment on a released revision moves neither its results nor its signatures: they are what was released.
  if (!isOpenStage(readStage(before.record.stage))) return { value, version, voidedSignatures: 0 }
  // Answers and the policy are no input of the engine's; everything else may be, if only as a fact of the review.
  const isInputOfEngine = note !== 'statement' && edit?.part !== 'answer' && edit?.part !== 'policy'
  if (!isInputOfEngine && !hasLiveSignature(before)) return { value, version, voidedSignatures: 0 }
  const changed = await loadRevisionAgain(tx, before)
  if (edit?.part === 'artwork' || edit?.part === 'design') await putArtworkJob(context, changed)
  const after = isInputOfEngine ? await recordEvaluation(tx, changed, at) : changed
  if (edit?.part === 'design') await noteVerdictFlips(context, before, after)
  return { value, version, voidedSignatures: await voidSignatures(context, before, after) }
}

/**
 * Evaluates with the present engine, limits, facts and day. Stores results that differ from the recorded ones, and
 * voids the signatures that they leave on other content.
 */
export async function evaluateContentAgain(context: WriteContext, revisionId: string): Promise<{ version: number }> {
  const { tx, at, record } = context
  const before = await loadRevision(tx, revisionId)
  const evaluated = await recordEvaluation(tx, before, at, 'always')
  if (evaluated === before) return { version: before.record.version }
  const version = await raiseVersion(tx, revisionId)
  await record({
    action: 'results-recorded',
    subject: { kind: 'revision', id: revisionId },
    projectId: before.record.projectId,
    revisionId,
    details: { engineVersion: ENGINE_VERSION },
  })
  await voidSignatures(context, before, { ...evaluated, record: { ...evaluated.record, version } })
  return { version }
}

async function raiseVersion(tx: TransactionClient, revisionId: string): Promise<number> {
  const { version } = await tx.revision.update({
    where: { id: revisionId },
    data: { version: { increment: 1 } },
    select: { version: true },
  })
  return version
}
