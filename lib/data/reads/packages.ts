import 'server-only'
import { type Actor, mayOnRevision, requireRevisionInView } from '../records/authorization'
import { loadRevision } from '../records/loaded-revision'
import { NotFoundError } from '../store/errors'
import { readKeptFile } from '../store/file-store'
import type { FileDownload } from '../views'
import { read } from './read'
import { findPackageRow, makeFileName } from './revision-view'

/** The person's edition of a released package. */
export async function getPackageFile(actor: Actor, revisionId: string): Promise<FileDownload> {
  const { sha256, fileName } = await read(actor, async ({ tx, rights }) => {
    const { subject, fabricatorCompanyId } = await requireRevisionInView(tx, rights, revisionId)
    if (!mayOnRevision(rights, 'package:download', subject)) throw new NotFoundError('package')
    const { record } = await loadRevision(tx, revisionId)
    const row = findPackageRow(record, fabricatorCompanyId)
    if (row === null) throw new NotFoundError('package')
    return { sha256: row.sha256, fileName: makeFileName([record.project.name, record.label], 'package.zip') }
  })
  return { fileName, mediaType: 'application/zip', bytes: await readKeptFile(sha256) }
}
