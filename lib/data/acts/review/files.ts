import 'server-only'
import { findPresentItemId } from '@/lib/engine/catalogue'
import type { AddArtworkInput, AttachFileInput, RemoveFileInput } from '@/lib/inputs'
import { describeAct, isAllowed } from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { type WriteContext, write } from '../../consequences/write'
import { findRoom, refuseWithoutRoom, requireRoom } from '../../reads/file-room'
import { requireAttachment } from '../../reads/files'
import { type ReadContext, read } from '../../reads/read'
import {
  type Actor,
  getMembership,
  makeReviewActionSubject,
  makeThreadSubject,
  maySeeReviewAction,
  maySeeThread,
  type PersonRights,
  type RevisionScope,
  requireAnswerer,
  requireAtStage,
  requireOnRevision,
  requireRevision,
  requireRevisionInView,
} from '../../records/authorization'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { toAttachmentView } from '../../records/part-views'
import type { TransactionClient } from '../../store/client'
import { NotAllowedError, NotFoundError, outcomeOf, refuseClash, refuseField } from '../../store/errors'
import { cleanFileName, type FileHead, requireArtworkFile, requireUsableFile } from '../../store/file-kinds'
import { type FileBytes, receiveFile } from '../../store/file-store'
import type { ActResult, AttachmentView } from '../../views'

interface KeptFile {
  readonly sha256: string
  readonly sizeBytes: number
  readonly mediaType: string
  readonly originalName: string
}

interface SentFile {
  readonly revisionId: string
  readonly fileName: string
  readonly bytes: FileBytes
  readonly requestKey?: string | undefined
}

interface Reception<I extends SentFile, T> {
  readonly action: string
  readonly input: I
  /** Whether the person may do this at all, and for which project: asked before a byte is read. */
  readonly authorize: (context: ReadContext) => Promise<RevisionScope>
  /** The media type, by content. */
  readonly check: (file: FileHead) => string
  /** Stores the row: in the transaction in which the file is put in its place. */
  readonly store: (context: WriteContext, file: KeptFile) => Promise<T>
}

/**
 * Takes a file in: rights and room first, then the bytes to disk, then the row and the file's place in one transaction. A file
 * that is refused at any of these is gone.
 */
async function receive<I extends SentFile, T>(
  actor: Actor,
  { action, input, authorize, check, store }: Reception<I, T>,
): Promise<ActResult<T>> {
  const arrived = await outcomeOf(async () => {
    const room = await read(actor, async (context) => {
      const { revision } = await authorize(context)
      return findRoom(context, revision.projectId)
    })
    return receiveFile(input.bytes, {
      mostBytes: room.mostBytes,
      refuseTooLarge: (sizeBytes) => refuseWithoutRoom(room, sizeBytes),
    })
  })
  if (!arrived.ok) return arrived
  const { sha256, sizeBytes, publish, discard } = arrived.value
  try {
    const checked = await outcomeOf(async () => check(arrived.value))
    if (!checked.ok) return checked
    const file = { sha256, sizeBytes, mediaType: checked.value, originalName: cleanFileName(input.fileName) }
    // The hash stands for the bytes: a retry under the same key sends them again.
    return await write(actor, action, { ...input, bytes: sha256 }, async (context) => {
      const { revision } = await authorize(context)
      const value = await store(context, file)
      await requireRoom(context, revision.projectId)
      await publish()
      return value
    })
  } finally {
    await discard()
  }
}

/** Puts a file beside an item's answer, as evidence, or beside a comment of the person's own. */
export function attachFile(actor: Actor, input: AttachFileInput): Promise<ActResult<AttachmentView>> {
  const { target } = input
  return receive(actor, {
    action: 'attach-file',
    input,
    authorize: async ({ tx, rights }) => {
      const scope = await requireRevisionInView(tx, rights, input.revisionId)
      if (target.kind === 'item') {
        requireAnswerable(rights, scope, await loadRevision(tx, scope.revision.id), target.itemId)
      } else if (target.kind === 'action') await requireOwnAction(tx, rights, scope, target.actionId)
      else if (target.kind === 'need') await requireReportedNeed(tx, rights, scope, target.needId)
      else await requireOwnComment(tx, rights, scope, target.commentId)
      return scope
    },
    check: requireUsableFile,
    store: async (context, file) => {
      const scope = await requireRevisionInView(context.tx, context.rights, input.revisionId)
      if (target.kind === 'item') return attachToItem(context, scope, target.itemId, file)
      if (target.kind === 'action') return attachToAction(context, scope, target.actionId, file)
      if (target.kind === 'need') return attachToNeed(context, scope, target.needId, file)
      return attachToComment(context, scope, target.commentId, file)
    },
  })
}

async function attachToItem(context: WriteContext, scope: RevisionScope, itemId: string, file: KeptFile) {
  const { revision, fabricatorCompanyId } = scope
  const loaded = await loadRevision(context.tx, revision.id)
  const item = requireAnswerable(context.rights, scope, loaded, itemId)
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
  const comment = await requireOwnComment(context.tx, context.rights, scope, commentId)
  return storeAttachment(context, scope, file, { itemId: null, commentId, companyId: comment.thread.audienceCompanyId })
}

/** A file that shows that an action was done. After the release too: it stands beside what was signed and changes none of it. */
async function attachToAction(context: WriteContext, scope: RevisionScope, actionId: string, file: KeptFile) {
  const action = await requireOwnAction(context.tx, context.rights, scope, actionId)
  return storeAttachment(context, scope, file, {
    itemId: null,
    commentId: null,
    actionId,
    companyId: action.audienceCompanyId,
  })
}

/** A result of a need; minutes and needs are the team's own, and so are their files. */
async function attachToNeed(context: WriteContext, scope: RevisionScope, needId: string, file: KeptFile) {
  await requireReportedNeed(context.tx, context.rights, scope, needId)
  const companyId = getMembership(context.rights, scope.revision.projectId)?.companyId ?? null
  return storeAttachment(context, scope, file, { itemId: null, commentId: null, needId, companyId })
}

/** A need that the person may report on, while nobody has accepted its result. */
async function requireReportedNeed(tx: TransactionClient, rights: PersonRights, scope: RevisionScope, needId: string) {
  const need = await tx.need.findUnique({ where: { id: needId } })
  if (need === null || need.revisionId !== scope.revision.id) throw new NotFoundError('need')
  if (scope.fabricatorCompanyId !== null) throw new NotFoundError('need')
  requireOnRevision(rights, scope, 'need:report')
  if (need.acceptedAt !== null || need.droppedReason !== null)
    refuseClash('The need is settled: its files stay as they are.')
}

/** An action that the person may report on, while nobody has closed it. */
async function requireOwnAction(tx: TransactionClient, rights: PersonRights, scope: RevisionScope, actionId: string) {
  const action = await tx.reviewAction.findUnique({ where: { id: actionId } })
  if (action === null || action.revisionId !== scope.revision.id) throw new NotFoundError('action')
  if (!maySeeReviewAction(rights, scope.subject, action)) throw new NotFoundError('action')
  requireAtStage(rights, scope.subject, 'review-action:report', (subject) => makeReviewActionSubject(subject, action))
  if (action.closedAt !== null) refuseClash('The action is settled. Reopen it to add evidence.')
  return action
}

/** A comment that the person may change, so that a file may stand beside it. */
async function requireOwnComment(tx: TransactionClient, rights: PersonRights, scope: RevisionScope, commentId: string) {
  const comment = await tx.comment.findUnique({ where: { id: commentId }, include: { thread: true } })
  if (comment === null || comment.thread.revisionId !== scope.revision.id) throw new NotFoundError('comment')
  if (!maySeeThread(rights, scope.subject, comment.thread)) throw new NotFoundError('comment')
  requireAtStage(rights, scope.subject, 'comment:edit', (subject) => ({
    ...makeThreadSubject(subject, comment.thread),
    kind: 'comment',
    authorId: comment.authorId,
  }))
  return comment
}

async function storeAttachment(
  { tx, rights, at, record }: WriteContext,
  { revision }: RevisionScope,
  file: KeptFile,
  target: {
    itemId: string | null
    commentId: string | null
    actionId?: string
    needId?: string
    companyId: string | null
  },
): Promise<AttachmentView> {
  const row = await tx.attachment.create({
    data: { revisionId: revision.id, ...target, ...file, uploadedById: rights.userId, createdAt: at },
  })
  await record({
    action: 'file-attached',
    subject: { kind: 'attachment', id: row.id },
    projectId: revision.projectId,
    revisionId: revision.id,
    companyId: target.companyId,
    details: {
      fileName: row.originalName,
      sha256: row.sha256,
      itemId: target.itemId,
      commentId: target.commentId,
      ...(target.actionId === undefined ? {} : { actionId: target.actionId }),
      ...(target.needId === undefined ? {} : { needId: target.needId }),
    },
  })
  return toAttachmentView({ people: new Map([[rights.userId, rights.name]]) }, row)
}

function requireAnswerable(rights: PersonRights, scope: RevisionScope, { template }: LoadedRevision, itemId: string) {
  const item = template.items.find(({ id }) => id === itemId)
  if (item === undefined) throw new NotFoundError('item')
  requireAnswerer(rights, scope.subject, item.answeredBy)
  return item
}

/** Takes a file off an answer or a comment. Its bytes and its record stay. */
export function removeAttachment(actor: Actor, input: RemoveFileInput): Promise<ActResult<null>> {
  return write(actor, 'remove-attachment', input, async (context) => {
    const { tx, rights, at, record } = context
    const { row, scope } = await requireAttachment(tx, rights, input.fileId)
    const itemId = row.itemId === null ? null : findPresentItemId(row.itemId)
    if (row.comment !== null) {
      const subject = { ...makeThreadSubject(scope.subject, row.comment.thread), kind: 'comment' as const }
      if (!isAllowed(rights, 'comment:edit', { ...subject, authorId: row.comment.authorId })) {
        throw new NotAllowedError(describeAct('comment:edit'))
      }
    }
    if (row.action !== null) await requireOwnAction(tx, rights, scope, row.action.id)
    if (row.need !== null) await requireReportedNeed(tx, rights, scope, row.need.id)
    const loaded = await loadRevision(tx, scope.revision.id)
    const question = itemId === null ? null : requireAnswerable(rights, scope, loaded, itemId).question
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
      await changeContent(context, loaded, { part: 'answer', summary }, remove)
    }
    return null
  })
}

/** Adds an artwork file. One with the name of another replaces it. */
export function addArtwork(actor: Actor, input: AddArtworkInput): Promise<ActResult<AttachmentView>> {
  return receive(actor, {
    action: 'add-artwork',
    input,
    authorize: ({ tx, rights }) => requireRevision(tx, rights, input.revisionId, 'revision:edit'),
    check: requireArtworkFile,
    store: (context, file) => storeArtwork(context, input.revisionId, file),
  })
}

async function storeArtwork(context: WriteContext, revisionId: string, file: KeptFile): Promise<AttachmentView> {
  const { tx, rights, at, record } = context
  const loaded = await loadRevision(tx, revisionId)
  const { projectId } = loaded.record
  const sameName = { revisionId, originalName: file.originalName, removedAt: null }
  const replaced = await tx.artwork.findFirst({ where: sameName })
  if (replaced?.sha256 === file.sha256) refuseField('file', 'already-there', 'is already there, byte for byte')
  const summary = [`artwork ${file.originalName} ${replaced === null ? 'added' : 'replaced'}`]
  const { value } = await changeContent(context, loaded, { part: 'artwork', summary }, async () => {
    if (replaced !== null) {
      await tx.artwork.update({ where: { id: replaced.id }, data: { removedAt: at, removedById: rights.userId } })
    }
    const row = await tx.artwork.create({
      data: { revisionId, ...file, uploadedById: rights.userId, createdAt: at },
    })
    await record({
      action: 'artwork-added',
      subject: { kind: 'artwork', id: row.id },
      projectId,
      revisionId,
      details: { fileName: row.originalName, sha256: row.sha256, replaced: replaced?.sha256 },
    })
    return toAttachmentView({ people: new Map([[rights.userId, rights.name]]) }, row)
  })
  return value
}

/** Takes an artwork file off the revision. Its bytes and its record stay. */
export function removeArtwork(actor: Actor, input: RemoveFileInput): Promise<ActResult<null>> {
  return write(actor, 'remove-artwork', input, async (context) => {
    const { tx, rights, at, record } = context
    const row = await tx.artwork.findUnique({ where: { id: input.fileId } })
    if (row === null) throw new NotFoundError('artwork file')
    await requireRevisionInView(tx, rights, row.revisionId, 'artwork file')
    const { revision } = await requireRevision(tx, rights, row.revisionId, 'revision:edit')
    if (row.removedAt !== null) return null
    const summary = [`artwork ${row.originalName} removed`]
    await changeContent(context, await loadRevision(tx, revision.id), { part: 'artwork', summary }, async () => {
      await tx.artwork.update({ where: { id: row.id }, data: { removedAt: at, removedById: rights.userId } })
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
