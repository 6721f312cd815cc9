import 'server-only'
import {
  type Actor,
  maySeeReviewAction,
  maySeeThread,
  type PersonRights,
  requireRevisionInView,
} from '../records/authorization'
import type { TransactionClient } from '../store/client'
import { NotFoundError } from '../store/errors'
import { readKeptFile } from '../store/file-store'
import type { FileDownload } from '../views'
import { read } from './read'

/** A file that the person may see: beside a comment or an action by its audience, beside an answer by who sent it. */
export async function requireAttachment(tx: TransactionClient, rights: PersonRights, attachmentId: string) {
  const row = await tx.attachment.findUnique({
    where: { id: attachmentId },
    include: { comment: { include: { thread: true } }, action: true, need: true },
  })
  if (row === null || row.removedAt !== null) throw new NotFoundError('attachment')
  const scope = await requireRevisionInView(tx, rights, row.revisionId, 'attachment')
  const { fabricatorCompanyId } = scope
  const isVisible =
    row.needId !== null
      ? fabricatorCompanyId === null
      : row.action !== null
        ? maySeeReviewAction(rights, scope.subject, row.action)
        : row.comment === null
          ? fabricatorCompanyId === null || row.companyId === null || row.companyId === fabricatorCompanyId
          : maySeeThread(rights, scope.subject, row.comment.thread)
  if (!isVisible) throw new NotFoundError('attachment')
  return { row, scope }
}

export async function getAttachmentFile(actor: Actor, attachmentId: string): Promise<FileDownload> {
  const { row } = await read(actor, ({ tx, rights }) => requireAttachment(tx, rights, attachmentId))
  return { fileName: row.originalName, mediaType: row.mediaType, bytes: await readKeptFile(row.sha256) }
}

export async function getArtworkFile(actor: Actor, artworkId: string): Promise<FileDownload> {
  const row = await read(actor, async ({ tx, rights }) => {
    const found = await tx.artwork.findUnique({ where: { id: artworkId } })
    if (found === null || found.removedAt !== null) throw new NotFoundError('artwork file')
    await requireRevisionInView(tx, rights, found.revisionId, 'artwork file')
    return found
  })
  return { fileName: row.originalName, mediaType: row.mediaType, bytes: await readKeptFile(row.sha256) }
}
