import 'server-only'
import { now } from '@/lib/config'
import { judgeStatus, makeMarkedCopy } from '@/lib/package'
import { write } from '../../consequences/write'
import { makeStatusListOf } from '../../reads/issue-status'
import { findPackageRow, makePackageName } from '../../reads/revision-view'
import { type Actor, getMembership, mayOnRevision, requireRevisionInView } from '../../records/authorization'
import { loadRevision } from '../../records/loaded-revision'
import { computing } from '../../store/computations'
import { NotFoundError, RefusalError } from '../../store/errors'
import { readKeptFile } from '../../store/file-store'
import type { FileDownload } from '../../views'

/**
 * The person's edition of a released package, with a receipt: who fetched it, and when. One that is no longer in force is
 * handed out marked on every page, with the package as it was signed inside.
 */
export async function getPackageFile(actor: Actor, revisionId: string): Promise<FileDownload> {
  const fetched = await write(actor, 'fetch-package', {}, async ({ tx, rights, at, record }) => {
    const { subject, fabricatorCompanyId } = await requireRevisionInView(tx, rights, revisionId)
    if (!mayOnRevision(rights, 'package:download', subject)) throw new NotFoundError('package')
    const { record: revision } = await loadRevision(tx, revisionId)
    const row = findPackageRow(revision, fabricatorCompanyId)
    const membership = getMembership(rights, subject.projectId)
    if (row === null || membership === null) throw new NotFoundError('package')
    const { companyId } = membership
    const receipt = await tx.packageReceipt.create({
      data: { packageId: row.id, userId: rights.userId, companyId, at, stage: subject.stage },
    })
    const edition = fabricatorCompanyId === null ? 'the team' : (revision.companies.get(companyId)?.name ?? '')
    await record({
      action: 'package-fetched',
      subject: { kind: 'receipt', id: receipt.id },
      projectId: subject.projectId,
      revisionId,
      companyId: fabricatorCompanyId,
      details: { edition, sha256: row.sha256, stage: subject.stage },
    })
    return {
      sha256: row.sha256,
      releasedAt: row.releasedAt.toISOString(),
      fileName: makePackageName(revision, row.releasedAt),
      list: await makeStatusListOf(tx, revisionId),
    }
  })
  if (!fetched.ok) throw new RefusalError(fetched.refusal)
  const { sha256, fileName, list, releasedAt } = fetched.value
  const original = await readKeptFile(sha256)
  const status = judgeStatus(revisionId, list, now(), releasedAt)
  const mediaType = 'application/zip'
  if (status.word === 'in force') return { fileName, mediaType, bytes: original }
  const marked = await computing(async () => makeMarkedCopy(original, status, list))
  if (!marked.ok) throw new Error(marked.issues[0]?.message ?? 'the package cannot be marked')
  const bytes = new Uint8Array(marked.value)
  return { fileName: `OBSOLETE-${fileName}`, mediaType, bytes }
}
