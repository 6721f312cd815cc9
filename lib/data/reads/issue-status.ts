import 'server-only'
import { now } from '@/lib/config'
import { makeStatusList, type StatusEntry, type StatusList } from '@/lib/package'
import { STAGES, type Stage } from '@/lib/review'
import { type Actor, findRevisionScope, type PersonRights, readStage } from '../records/authorization'
import { loadWorkspace } from '../records/settings-record'
import { loadSigningKeys } from '../records/signing-keys'
import type { TransactionClient } from '../store/client'
import type { FileDownload } from '../views'
import { read } from './read'

/** Stages of revisions that have been issued. */
export const ISSUED_STAGES = ['released', 'superseded', 'withdrawn'] as const satisfies readonly Stage[]
export type IssuedStage = (typeof ISSUED_STAGES)[number]

export function readIssuedStage(stage: string): IssuedStage {
  const found = ISSUED_STAGES.find((known) => known === stage)
  if (found === undefined) throw new Error(`an issued revision is at the stage "${stage}", one of ${STAGES.join(', ')}`)
  return found
}

const ISSUED = {
  supersededBy: { select: { label: true } },
  release: true,
  shares: { select: { companyId: true } },
} as const

/** What a status list says of these revisions, in the order asked for. */
async function loadStatusEntries(
  tx: TransactionClient,
  rights: PersonRights | null,
  where: { readonly id?: string; readonly projectId?: { in: string[] } },
): Promise<StatusEntry[]> {
  const rows = await tx.revision.findMany({
    where: { ...where, stage: { in: [...ISSUED_STAGES] }, packages: { some: {} } },
    include: ISSUED,
    orderBy: [{ stageSince: 'asc' }, { id: 'asc' }],
  })
  return rows
    .filter(
      (row) => rights === null || findRevisionScope(rights, { ...row, stage: readStage(row.stage) }, false) !== null,
    )
    .map((row) => ({
      revisionId: row.id,
      partNumber: row.release?.partNumber ?? '',
      revision: row.label,
      status: readIssuedStage(row.stage),
      since: row.stageSince.toISOString(),
      supersededBy: row.supersededBy?.label ?? null,
      validUntil: row.release?.validUntil ?? null,
      quantityLimit: row.release?.quantityLimit ?? null,
    }))
}

async function sign(tx: TransactionClient, entries: readonly StatusEntry[]): Promise<StatusList> {
  const { name: workspace } = await loadWorkspace(tx)
  return makeStatusList({ workspace, issuedAt: now(), entries }, await loadSigningKeys(tx))
}

/** A signed list of the one revision, for those who fetch its package. */
export async function makeStatusListOf(tx: TransactionClient, revisionId: string): Promise<StatusList> {
  return sign(tx, await loadStatusEntries(tx, null, { id: revisionId }))
}

/** The signed list of all issued revisions that the person may see: the command reads it without a server. */
export function getStatusListFile(actor: Actor): Promise<FileDownload> {
  return read(actor, async ({ tx, rights }) => {
    const projectIds = rights.memberships.map(({ projectId }) => projectId)
    const list = await sign(tx, await loadStatusEntries(tx, rights, { projectId: { in: projectIds } }))
    return {
      fileName: `status-${list.issuedAt.slice(0, 10)}.json`,
      mediaType: 'application/json',
      bytes: new TextEncoder().encode(`${JSON.stringify(list, null, 2)}\n`),
    }
  })
}

/**
 * What became of the revision of a package that somebody holds, and that this installation signed: they know of it
 * already. Null where there is no such revision here.
 */
export function getPackageStatus(actor: Actor, revisionId: string): Promise<StatusEntry | null> {
  return read(actor, async ({ tx }) => (await loadStatusEntries(tx, null, { id: revisionId }))[0] ?? null)
}
