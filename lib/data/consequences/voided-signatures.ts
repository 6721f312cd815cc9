import 'server-only'
import { findSignaturesToVoid } from '@/lib/review'
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
    await voidSignature(context, after, { signatureId, reason, changes })
  }
  return toVoid.length
}

export async function voidSignature(
  { tx, rights, at, record }: WriteContext,
  { record: revision }: LoadedRevision,
  { signatureId, reason, changes }: { signatureId: string; reason: string; changes: readonly string[] },
): Promise<void> {
  await tx.signature.update({
    where: { id: signatureId },
    data: { voidedAt: at, voidedById: rights.userId, voidReason: reason, changesJson: JSON.stringify(changes) },
  })
  await record({
    action: 'signature-voided',
    subject: { kind: 'signature', id: signatureId },
    projectId: revision.projectId,
    revisionId: revision.id,
    details: { reason, changes: [...changes] },
  })
}
