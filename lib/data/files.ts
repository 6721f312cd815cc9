import 'server-only'
import type { AddArtworkInput, AttachFileInput, RemoveFileInput } from '@/lib/inputs'
import { isAllowed } from '@/lib/review'
import {
  type Actor,
  describeAct,
  makeThreadSubject,
  maySeeThread,
  type RevisionScope,
  requireAnswerer,
  requireAtStage,
  requireRevision,
  requireRevisionInView,
  type Standing,
} from './authorization'
import type { TransactionClient } from './client'
import { changeContent } from './content'
import { NotAllowedError, NotFoundError, outcomeOf, refuseField } from './errors'
import { cleanFileName, requireArtworkFile, requireUsableFile } from './file-kinds'
import { keepFile, readKeptFile } from './file-store'
import { toAttachmentView } from './part-views'
import { read } from './read'
import { type LoadedRevision, loadRevision } from './snapshot'
import type { AttachmentView, FileDownload, Outcome } from './views'
import { type WriteContext, write } from './write'

interface KeptFile {
  readonly sha256: string
  readonly sizeBytes: number
  readonly mediaType: string
  readonly originalName: string
}

/**
 * Checks and keeps the bytes before the transaction, then runs it. The person's right to see the revision is asked
 * first, so that a stranger cannot fill the disk.
 */
async function withKeptFile<T>(
  actor: Actor,
  input: { readonly revisionId: string; readonly fileName: string; readonly bytes: Uint8Array },
  check: (bytes: Uint8Array) => string,
  run: (file: KeptFile) => Promise<Outcome<T>>,
): Promise<Outcome<T>> {
  await read(actor, ({ tx, standing }) => requireRevisionInView(tx, standing, input.revisionId))
  const kept = await outcomeOf(async () => {
    const mediaType = check(input.bytes)
    return { ...(await keepFile(input.bytes)), mediaType, originalName: cleanFileName(input.fileName) }
  })
  return kept.ok ? run(kept.value) : kept
}

/** Puts a file beside an item's answer, as evidence, or beside a comment of the person's own. */
export function attachFile(actor: Actor, input: AttachFileInput): Promise<Outcome<AttachmentView>> {
  return withKeptFile(actor, input, requireUsableFile, (file) =>
    write(actor, 'attach-file', input, async (context) => {
      const scope = await requireRevisionInView(context.tx, context.standing, input.revisionId)
      return input.target.kind === 'item'
        ? attachToItem(context, scope, input.target.itemId, file)
        : attachToComment(context, scope, input.target.commentId, file)
    }),
  )
}

async function attachToItem(context: WriteContext, scope: RevisionScope, itemId: string, file: KeptFile) {
  const { revision, fabricatorCompanyId } = scope
  const loaded = await loadRevision(context.tx, revision.id)
  const item = requireAnswerable(context.standing, scope, loaded, itemId)
  const existing = await context.tx.attachment.findFirst({
    where: { revisionId: revision.id, itemId, sha256: file.sha256, removedAt: null, companyId: fabricatorCompanyId },
  })
  if (existing !== null) refuseField('file', 'already-there', `is already attached as ${existing.originalName}`)
  const change = { part: 'answer' as const, summary: [`${item.question}: attached ${file.originalName}`] }
  const { value } = await changeContent(context, loaded, change, () =>
    storeAttachment(context, scope, file, { itemId, commentId: null, companyId: fabricatorCompanyId }),
  )
  return value
}

async function attachToComment(context: WriteContext, scope: RevisionScope, commentId: string, file: KeptFile) {
  const { tx, standing } = context
  const comment = await tx.comment.findUnique({ where: { id: commentId }, include: { thread: true } })
  if (comment === null || comment.thread.revisionId !== scope.revision.id) throw new NotFoundError('comment')
  if (!maySeeThread(standing, scope.subject, comment.thread)) throw new NotFoundError('comment')
  requireAtStage(standing, scope.subject, 'comment:edit', (subject) => ({
    ...makeThreadSubject(subject, comment.thread),
    kind: 'comment',
    authorId: comment.authorId,
  }))
  return storeAttachment(context, scope, file, { itemId: null, commentId, companyId: comment.thread.companyId })
}

async function storeAttachment(
  { tx, standing, at, record }: WriteContext,
  { revision }: RevisionScope,
  file: KeptFile,
  target: { itemId: string | null; commentId: string | null; companyId: string | null },
): Promise<AttachmentView> {
  const row = await tx.attachment.create({
    data: { revisionId: revision.id, ...target, ...file, uploadedById: standing.userId, createdAt: at },
  })
  await record({
    action: 'file-attached',
    subject: { kind: 'attachment', id: row.id },
    projectId: revision.projectId,
    revisionId: revision.id,
    companyId: target.companyId,
    details: { fileName: row.originalName, sha256: row.sha256, itemId: target.itemId, commentId: target.commentId },
  })
  return toAttachmentView({ people: new Map([[standing.userId, standing.name]]) }, row)
}

function requireAnswerable(standing: Standing, scope: RevisionScope, { template }: LoadedRevision, itemId: string) {
  const item = template.items.find(({ id }) => id === itemId)
  if (item === undefined) throw new NotFoundError('item')
  requireAnswerer(standing, scope.subject, item.answeredBy)
  return item
}

/** Takes a file off an answer or a comment. Its bytes and its record stay. */
export function removeAttachment(actor: Actor, input: RemoveFileInput): Promise<Outcome<null>> {
  return write(actor, 'remove-attachment', input, async (context) => {
    const { tx, standing, at, record } = context
    const { row, scope } = await requireAttachment(tx, standing, input.fileId)
    const { itemId } = row
    if (row.comment !== null) {
      const subject = { ...makeThreadSubject(scope.subject, row.comment.thread), kind: 'comment' as const }
      if (!isAllowed(standing, 'comment:edit', { ...subject, authorId: row.comment.authorId })) {
        throw new NotAllowedError(describeAct('comment:edit'))
      }
    }
    const loaded = await loadRevision(tx, scope.revision.id)
    const question = itemId === null ? null : requireAnswerable(standing, scope, loaded, itemId).question
    const remove = async () => {
      await tx.attachment.update({ where: { id: row.id }, data: { removedAt: at } })
      await record({
        action: 'file-removed',
        subject: { kind: 'attachment', id: row.id },
        projectId: scope.revision.projectId,
        revisionId: scope.revision.id,
        companyId: row.companyId,
        details: { fileName: row.originalName, sha256: row.sha256 },
      })
    }
    if (question === null) await remove()
    else {
      const summary = [`${question}: removed ${row.originalName}`]
      await changeContent(context, await loadRevision(tx, scope.revision.id), { part: 'answer', summary }, remove)
    }
    return null
  })
}

/** A file that the person may see: beside a comment by the thread's audience, beside an answer by who sent it. */
async function requireAttachment(tx: TransactionClient, standing: Standing, attachmentId: string) {
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

/** Adds an artwork file. One with the name of another replaces it. */
export function addArtwork(actor: Actor, input: AddArtworkInput): Promise<Outcome<AttachmentView>> {
  return withKeptFile(actor, input, requireArtworkFile, (file) =>
    write(actor, 'add-artwork', input, async (context) => {
      const { tx, standing, at, record } = context
      const { revision } = await requireRevision(tx, standing, input.revisionId, 'revision:edit')
      const sameName = { revisionId: revision.id, originalName: file.originalName, removedAt: null }
      const replaced = await tx.artwork.findFirst({ where: sameName })
      const people = new Map([[standing.userId, standing.name]])
      if (replaced?.sha256 === file.sha256) refuseField('file', 'already-there', 'is there already, byte for byte')
      const summary = [`artwork ${file.originalName} ${replaced === null ? 'added' : 'replaced'}`]
      const { value } = await changeContent(
        context,
        await loadRevision(tx, revision.id),
        { part: 'artwork', summary },
        async () => {
          if (replaced !== null) {
            await tx.artwork.update({
              where: { id: replaced.id },
              data: { removedAt: at, removedById: standing.userId },
            })
          }
          const row = await tx.artwork.create({
            data: { revisionId: revision.id, ...file, uploadedById: standing.userId, createdAt: at },
          })
          await record({
            action: 'artwork-added',
            subject: { kind: 'artwork', id: row.id },
            projectId: revision.projectId,
            revisionId: revision.id,
            details: { fileName: row.originalName, sha256: row.sha256, replaced: replaced?.sha256 },
          })
          return toAttachmentView({ people }, row)
        },
      )
      return value
    }),
  )
}

/** Takes an artwork file off the revision. Its bytes and its record stay. */
export function removeArtwork(actor: Actor, input: RemoveFileInput): Promise<Outcome<null>> {
  return write(actor, 'remove-artwork', input, async (context) => {
    const { tx, standing, at, record } = context
    const row = await tx.artwork.findUnique({ where: { id: input.fileId } })
    if (row === null) throw new NotFoundError('artwork file')
    await requireRevisionInView(tx, standing, row.revisionId, 'artwork file')
    const { revision } = await requireRevision(tx, standing, row.revisionId, 'revision:edit')
    if (row.removedAt !== null) return null
    const summary = [`artwork ${row.originalName} removed`]
    await changeContent(context, await loadRevision(tx, revision.id), { part: 'artwork', summary }, async () => {
      await tx.artwork.update({ where: { id: row.id }, data: { removedAt: at, removedById: standing.userId } })
      await record({
        action: 'artwork-removed',
        subject: { kind: 'artwork', id: row.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        details: { fileName: row.originalName, sha256: row.sha256 },
      })
    })
    return null
  })
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
