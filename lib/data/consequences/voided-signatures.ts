import 'server-only'
import { findSignaturesToVoid } from '@/lib/review'
import { type LoadedRevision, loadRevision } from '../records/loaded-revision'
import { makeSnapshot } from '../records/snapshot'
import type { WriteContext } from './write'

export async function voidSignatures(context: WriteContext, before: LoadedRevision): Promise<number> {
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
