import 'server-only'
import { type Actor, maySeeThread, requireRevisionInView, type Standing } from '../records/authorization'
import type { TransactionClient } from '../store/client'
import { NotFoundError } from '../store/errors'
import { readKeptFile } from '../store/file-store'
import type { FileDownload } from '../views'
import { read } from './read'

/** A file that the person may see: beside a comment by the thread's audience, beside an answer by who sent it. */
export async function requireAttachment(tx: TransactionClient, standing: Standing, attachmentId: string) {
  const row = await tx.attachment.findUnique({
    where: { id: attachmentId },
    include: { comment: { include: { thread: true } } },
  })
  if (row === null || row.removedAt !== null) throw new NotFoundError('attachment')
  const scope = await requireRevisionInView(tx, standing, row.revisionId, 'attachment')
  const { fabricatorCompanyId } = scope
  const isVisible =
    row.comment === null
      ? fabricatorCompanyId === null || row.companyId === null || row.companyId === fabricatorCompanyId
      : maySeeThread(standing, scope.subject, row.comment.thread)
  if (!isVisible) throw new NotFoundError('attachment')
  return { row, scope }
}

export async function getAttachmentFile(actor: Actor, attachmentId: string): Promise<FileDownload> {
  const { row } = await read(actor, ({ tx, standing }) => requireAttachment(tx, standing, attachmentId))
  return { fileName: row.originalName, mediaType: row.mediaType, bytes: await readKeptFile(row.sha256) }
}

export async function getArtworkFile(actor: Actor, artworkId: string): Promise<FileDownload> {
  const row = await read(actor, async ({ tx, standing }) => {
    const found = await tx.artwork.findUnique({ where: { id: artworkId } })
    if (found === null || found.removedAt !== null) throw new NotFoundError('artwork file')
    await requireRevisionInView(tx, standing, found.revisionId, 'artwork file')
    return found
  })
  return { fileName: row.originalName, mediaType: row.mediaType, bytes: await readKeptFile(row.sha256) }
}
