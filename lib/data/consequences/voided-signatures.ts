import 'server-only'
import { findSignaturesToVoid, listPublicChanges, type VoidingChange, writeVoidingChanges } from '@/lib/review'
import type { LoadedRevision } from '../records/loaded-revision'
import { makeSnapshot } from '../records/snapshot'
import type { WriteContext } from './write'

export function hasLiveSignature({ record }: LoadedRevision): boolean {
  return record.signatures.some(({ voidedAt }) => voidedAt === null)
}

/** Voids the signatures that a change left on other content. @returns how many */
export async function voidSignatures(
  context: WriteContext,
  before: LoadedRevision,
  after: LoadedRevision,
): Promise<number> {
  if (!hasLiveSignature(before)) return 0
  const toVoid = findSignaturesToVoid(makeSnapshot(before, null).snapshot, makeSnapshot(after, null).snapshot)
  for (const { signatureId, reason, changes } of toVoid) {
    await voidSignature(context, after, { signatureId, reason, changes, by: 'application' })
  }
  return toVoid.length
}

interface Voiding {
  readonly signatureId: string
  readonly reason: string
  readonly changes: readonly VoidingChange[]
  /** A signer withdraws their own. In every other case the application voids it, because of a change by somebody. */
  readonly by: 'signer' | 'application'
}

export async function voidSignature(
  { tx, rights, at, record, recordByItself }: WriteContext,
  { record: revision }: LoadedRevision,
  { signatureId, reason, changes, by }: Voiding,
): Promise<void> {
  await tx.signature.update({
    where: { id: signatureId },
    data: { voidedAt: at, voidedById: rights.userId, voidReason: reason, changesJson: writeVoidingChanges(changes) },
  })
  await (by === 'signer' ? record : recordByItself)({
    action: 'signature-voided',
    subject: { kind: 'signature', id: signatureId },
    projectId: revision.projectId,
    revisionId: revision.id,
    details: { reason, changes: listPublicChanges(changes), ...(by === 'signer' ? {} : { because: rights.name }) },
  })
}
