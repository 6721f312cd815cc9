import 'server-only'
import type { RevisionEntry } from '@/lib/package'
import type { TransactionClient } from '../store/client'
import type { RevisionRecord } from './revision-record'

/** What a revision block says of a release. */
export function toRevisionEntry(
  label: string,
  {
    changeNumber,
    reason,
    releasedAt,
  }: { readonly changeNumber: string; readonly reason: string; readonly releasedAt: Date },
  releasedBy: string,
): RevisionEntry {
  return {
    label,
    change: [changeNumber, reason].filter((text) => text.trim() !== '').join(': '),
    releasedBy,
    issuedOn: releasedAt.toISOString().slice(0, 10),
  }
}

/**
 * Releases that led to a revision, oldest first: the one that it replaces or was copied from, what that replaced, and so on. There is one
 * drawing for everybody, so a release that was not shared with each company that this revision is shared with gives its label and day alone.
 *
 * @param previousId  of the revision before this one; null where there is none
 */
export async function listIssuedBefore(
  tx: TransactionClient,
  record: Pick<RevisionRecord, 'id' | 'projectId' | 'shares'>,
  previousId: string | null,
): Promise<RevisionEntry[]> {
  if (previousId === null) return []
  const releases = await tx.release.findMany({
    where: { revision: { projectId: record.projectId } },
    include: { revision: { select: { shares: { select: { companyId: true } } } } },
  })
  const byRevision = new Map(releases.map((release) => [release.revisionId, release]))
  const chain: typeof releases = []
  const seen = new Set([record.id])
  for (let id: string | null = previousId; id !== null && !seen.has(id); ) {
    seen.add(id)
    const release = byRevision.get(id)
    if (release === undefined) break
    chain.unshift(release)
    id = release.replacesId
  }
  if (chain.length === 0) return []
  const people = await tx.user.findMany({
    where: { id: { in: chain.map(({ releasedById }) => releasedById) } },
    select: { id: true, name: true },
  })
  const names = new Map(people.map(({ id, name }) => [id, name]))
  return chain.map((release) => {
    const had = new Set(release.revision.shares.map(({ companyId }) => companyId))
    const isKnownToAll = record.shares.every(({ companyId }) => had.has(companyId))
    const entry = toRevisionEntry(release.label, release, names.get(release.releasedById) ?? '')
    return isKnownToAll ? entry : { ...entry, change: '', releasedBy: '' }
  })
}
