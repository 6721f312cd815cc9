import 'server-only'
import { ENGINE_VERSION, readStoredSentences } from '@/lib/engine'
import { findSignaturesToVoid, isOpenStage } from '@/lib/review'
import { getFabricatorCompanyId, readStage } from './authorization'
import type { TransactionClient } from './client'
import { recordEvaluation } from './evaluation'
import { isVisibleTo, type LoadedRevision, loadRevision } from './loaded-revision'
import { noteVerdictFlips } from './probing'
import { getPersonName } from './revision-record'
import { makeSnapshot } from './snapshot'
import type { ChangeSince } from './views'
import type { WriteContext } from './write'

/** Parts of a revision's content whose change is remembered with its author. */
export type ContentPart = 'design' | 'answer' | 'artwork' | 'template'

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
 * is noted with its author, results are computed anew and stored, signatures on other content are voided, each in the
 * trail. Runs inside the caller's transaction.
 *
 * @param before  the revision as the caller loaded it in this transaction
 * @param note  null for a change that is not an edit of the person's (a thread that opens or closes, a share)
 */
export async function changeContent<T>(
  context: WriteContext,
  before: LoadedRevision,
  note: ContentChangeNote | null,
  change: () => Promise<T>,
): Promise<ChangedContent<T>> {
  const { tx, standing, at } = context
  const { id: revisionId, projectId } = before.record
  const value = await change()
  const version = await raiseVersion(tx, revisionId)
  if (note !== null) {
    await tx.edit.create({
      data: {
        revisionId,
        userId: standing.userId,
        companyId: getFabricatorCompanyId(standing, projectId),
        part: note.part,
        version,
        summaryJson: JSON.stringify(note.summary),
        at,
      },
    })
  }
  // A comment on a released revision moves neither its results nor its signatures: they are what was released.
  if (!isOpenStage(readStage(before.record.stage))) return { value, version, voidedSignatures: 0 }
  // Answers are no input of the engine's; everything else may be, if only as a fact of the review.
  if (note?.part !== 'answer') {
    const after = await loadRevision(tx, revisionId)
    await recordEvaluation(tx, after, at)
    if (note?.part === 'design') await noteVerdictFlips(context, before, after)
  }
  const voidedSignatures = await voidSignatures(context, before)
  return { value, version, voidedSignatures }
}

/**
 * Evaluates with the present engine, limits, facts and day. Stores results that differ from the recorded ones, and
 * voids the signatures that they leave on other content.
 */
export async function evaluateContentAgain(context: WriteContext, revisionId: string): Promise<{ version: number }> {
  const { tx, at, record } = context
  const before = await loadRevision(tx, revisionId)
  if (!(await recordEvaluation(tx, before, at, 'always'))) return { version: before.record.version }
  const version = await raiseVersion(tx, revisionId)
  await record({
    action: 'results-recorded',
    subject: { kind: 'revision', id: revisionId },
    projectId: before.record.projectId,
    revisionId,
    details: { engineVersion: ENGINE_VERSION },
  })
  await voidSignatures(context, before)
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

async function voidSignatures(context: WriteContext, before: LoadedRevision): Promise<number> {
  if (before.record.signatures.every(({ voidedAt }) => voidedAt !== null)) return 0
  const after = await loadRevision(context.tx, before.record.id)
  const toVoid = findSignaturesToVoid(makeSnapshot(before, null).snapshot, makeSnapshot(after, null).snapshot)
  for (const { signatureId, reason, changes } of toVoid) {
    await voidSignature(context, after, { signatureId, reason, changes })
  }
  return toVoid.length
}

export async function voidSignature(
  { tx, standing, at, record }: WriteContext,
  { record: revision }: LoadedRevision,
  { signatureId, reason, changes }: { signatureId: string; reason: string; changes: readonly string[] },
): Promise<void> {
  await tx.signature.update({
    where: { id: signatureId },
    data: { voidedAt: at, voidedById: standing.userId, voidReason: reason, changesJson: JSON.stringify(changes) },
  })
  await record({
    action: 'signature-voided',
    subject: { kind: 'signature', id: signatureId },
    projectId: revision.projectId,
    revisionId: revision.id,
    details: { reason, changes: [...changes] },
  })
}

/**
 * Who changed content since the version that the person saw; oldest first.
 * @param fabricatorCompanyId  of the person who is told: what another fabricator's people did is left out
 */
export function listChangesSince(
  loaded: LoadedRevision,
  seenVersion: number,
  fabricatorCompanyId: string | null,
): ChangeSince[] {
  return loaded.record.edits
    .filter((edit) => edit.version > seenVersion && isVisibleTo(fabricatorCompanyId, edit.companyId))
    .map((edit) => toChange(loaded, edit))
}

/** Who saved the design since the design's version that the person saw; oldest first. */
export function listDesignChangesSince(loaded: LoadedRevision, seenDesignVersion: number): ChangeSince[] {
  const saves = loaded.record.edits.filter((edit) => edit.part === 'design')
  const missed = Math.max(0, loaded.record.designVersion - seenDesignVersion)
  return missed === 0 ? [] : saves.slice(-missed).map((edit) => toChange(loaded, edit))
}

function toChange(loaded: LoadedRevision, edit: LoadedRevision['record']['edits'][number]): ChangeSince {
  return {
    by: getPersonName(loaded.record, edit.userId),
    at: edit.at.toISOString(),
    what: readStoredSentences('the summary of an edit', edit.summaryJson),
  }
}
