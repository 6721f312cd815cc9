import 'server-only'
import type {
  AssignThreadInput,
  CloseThreadInput,
  EditCommentInput,
  OpenThreadInput,
  ReopenThreadInput,
  ReplyInput,
} from '@/lib/inputs'
import {
  type Action,
  type ActionSubjects,
  type Done,
  describeAct,
  describeDone,
  isAllowed,
  isOpenStage,
  listDesignAnchors,
  mayCloseUnchanged,
  nameThreadKind,
  needsDone,
  THREAD_KINDS,
} from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { requireOwner } from '../../consequences/taken-on-actions'
import { type WriteContext, write } from '../../consequences/write'
import type { Thread } from '../../generated/sqlite/client'
import {
  type Actor,
  getMembership,
  makeThreadSubject,
  maySeeThread,
  type PersonRights,
  type RevisionScope,
  requireAtStage,
  requireOnRevision,
  requireRevisionInView,
} from '../../records/authorization'
import { listTakenOff } from '../../records/declaration-record'
import { keepDesignState } from '../../records/design-states'
import { listDoneOptions, loadDoneBases, requireDone } from '../../records/done-since'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { readWord } from '../../records/stored-words'
import type { TransactionClient } from '../../store/client'
import { NotAllowedError, NotFoundError, refuseClash, refuseField, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'

/**
 * Opens a thread on the revision or on a part of it. A fabricator's thread is seen by the team and by its own company;
 * the team's own by the team alone, or beside it by the one fabricator that is named.
 */
export function openThread(
  actor: Actor,
  input: OpenThreadInput,
): Promise<ActResult<{ threadId: string; commentId: string }>> {
  return write(actor, 'open-thread', input, async (context) => {
    const { tx, rights } = context
    const scope = await requireRevisionInView(tx, rights, input.revisionId)
    requireOnRevision(rights, scope, 'revision:comment')
    const { revision, fabricatorCompanyId } = scope
    if (input.kind === 'engineering-query') {
      if (fabricatorCompanyId === null) {
        refuseField('kind', 'fabricator-only', "is a fabricator's question; use a note or a change")
      }
      requireOnRevision(rights, scope, 'revision:raise-query')
    }
    const loaded = await loadRevision(tx, revision.id)
    const audienceCompanyId = fabricatorCompanyId ?? findAudience(scope, input.companyId)
    const anchorLabel = findAnchorLabel(loaded, input.anchor)
    const openedByCompanyId = getOwnCompanyId(rights, revision.projectId)
    const wanted = { ownerId: input.ownerId ?? '', dueOn: input.dueOn ?? '' }
    await requireAnswerOwner(context, scope, { audienceCompanyId, openedByCompanyId }, wanted.ownerId)
    const { value } = await changeContent(context, loaded, null, async () => {
      const { thread, commentId } = await createThread(
        context,
        scope,
        loaded,
        {
          audienceCompanyId,
          openedByCompanyId,
          anchorKind: input.anchor.kind,
          anchorId: input.anchor.id,
          anchorLabel,
          anchorXMm: input.anchor.place?.xMm ?? null,
          anchorYMm: input.anchor.place?.yMm ?? null,
          kind: input.kind,
          title: input.title,
          ownerId: wanted.ownerId === '' ? null : wanted.ownerId,
          dueOn: wanted.dueOn === '' ? null : wanted.dueOn,
        },
        input.text,
      )
      return { threadId: thread.id, commentId }
    })
    return value
  })
}

export function findAudience({ subject }: RevisionScope, companyId: string | undefined): string | null {
  if (companyId === undefined) return null
  if (!subject.sharedWithCompanyIds.includes(companyId)) {
    refuseField('companyId', 'not-shared', 'does not see this revision; share it first')
  }
  return companyId
}

export function getOwnCompanyId(rights: PersonRights, projectId: string): string {
  const membership = getMembership(rights, projectId)
  if (membership === null) throw new NotFoundError('revision')
  return membership.companyId
}

/** Somebody who sees the thread and can answer it: who asks does not answer. @returns their name, empty for nobody */
async function requireAnswerOwner(
  { tx }: WriteContext,
  { revision }: RevisionScope,
  thread: Pick<Thread, 'audienceCompanyId' | 'openedByCompanyId'>,
  ownerId: string,
): Promise<string> {
  if (ownerId === '') return ''
  const owner = await requireOwner(tx, revision.projectId, thread.audienceCompanyId, ownerId)
  if (thread.audienceCompanyId === thread.openedByCompanyId && owner.companyId === thread.audienceCompanyId) {
    refuseField('ownerId', 'asks', 'is of the company that asks: choose somebody of the team')
  }
  return owner.name
}

/** Who is to answer it and by when. It moves nothing that was signed: a signature covers what is said, not who is asked. */
export function assignThread(actor: Actor, input: AssignThreadInput): Promise<ActResult<null>> {
  return write(actor, 'assign-thread', input, async (context) => {
    const { tx, rights, record } = context
    const { scope, thread } = await requireThread(tx, rights, input.threadId)
    requireOnThread(rights, scope, thread, 'thread:assign')
    if (thread.state === 'closed') refuseClash('The thread is closed. Reopen it to continue.')
    requireThreadSeen(thread, input.seenVersion)
    const before = { ownerId: thread.ownerId ?? '', dueOn: thread.dueOn ?? '' }
    if (before.ownerId === input.ownerId && before.dueOn === input.dueOn) return null
    // Who was named before and has left since may stay named while the day alone moves.
    const nameBefore = before.ownerId === '' ? '' : await readName(tx, before.ownerId)
    const owner =
      before.ownerId === input.ownerId ? nameBefore : await requireAnswerOwner(context, scope, thread, input.ownerId)
    await tx.thread.update({
      where: { id: thread.id },
      data: {
        ownerId: input.ownerId === '' ? null : input.ownerId,
        dueOn: input.dueOn === '' ? null : input.dueOn,
        version: { increment: 1 },
      },
    })
    await record({
      action: 'thread-assigned',
      ...placeOfThread(scope, thread),
      details: { title: thread.title, owner, dueOn: input.dueOn, before: { owner: nameBefore, dueOn: before.dueOn } },
    })
    return null
  })
}

async function readName(tx: TransactionClient, userId: string): Promise<string> {
  return (await tx.user.findUniqueOrThrow({ where: { id: userId }, select: { name: true } })).name
}

/** The anchor's name as it was when the thread was opened: the part may be renamed or removed later. */
function findAnchorLabel({ design, record, template }: LoadedRevision, anchor: OpenThreadInput['anchor']): string {
  const find = (): string | undefined => {
    switch (anchor.kind) {
      case 'revision':
        return 'the revision'
      case 'item':
        return template.items.find(({ id }) => id === anchor.id)?.question
      case 'artwork': {
        const file = record.artwork.find(({ id }) => id === anchor.id)?.originalName
        if (file === undefined || anchor.place === undefined) return file
        return `${file} at x ${anchor.place.xMm} mm, y ${anchor.place.yMm} mm`
      }
      default:
        return listDesignAnchors(design).find(({ kind, id }) => kind === anchor.kind && id === anchor.id)?.label
    }
  }
  const label = find()
  if (label === undefined) refuseField('anchor', 'unknown', `names a ${anchor.kind} that this revision does not have`)
  return label
}

/** Replies; a reply that is marked as the answer turns an open thread into an answered one. */
export function replyToThread(actor: Actor, input: ReplyInput): Promise<ActResult<{ commentId: string }>> {
  return write(actor, 'reply-to-thread', input, async (context) => {
    const { tx, rights, at, record } = context
    const { scope, thread } = await requireThread(tx, rights, input.threadId)
    requireOnThread(rights, scope, thread, 'thread:reply')
    if (thread.state === 'closed') refuseClash('The thread is closed. Reopen it to continue.')
    if (!input.isAnswer) {
      return whileSigned(context, scope, async () => {
        const commentId = await addComment(context, scope, thread, { text: input.text, isAnswer: false })
        await tx.thread.update({ where: { id: thread.id }, data: { version: { increment: 1 } } })
        await record({ action: 'thread-replied', ...placeOfThread(scope, thread), details: { title: thread.title } })
        return { commentId }
      })
    }
    requireOnThread(rights, scope, thread, 'thread:answer')
    const { value: commentId } = await changeContent(
      context,
      await loadRevision(tx, scope.revision.id),
      null,
      async () => {
        const id = await addComment(context, scope, thread, { text: input.text, isAnswer: true })
        await tx.thread.update({
          where: { id: thread.id },
          data: { state: 'answered', answeredById: rights.userId, answeredAt: at, version: { increment: 1 } },
        })
        await record({ action: 'thread-answered', ...placeOfThread(scope, thread), details: { title: thread.title } })
        return id
      },
    )
    return { commentId }
  })
}

/** The words of an open thread are signed: a further message voids the signatures. Without signatures it changes nothing else. */
async function whileSigned<T>(context: WriteContext, scope: RevisionScope, act: () => Promise<T>): Promise<T> {
  if (!scope.subject.hasLiveSignature || !isOpenStage(scope.revision.stage)) return act()
  const { value } = await changeContent(context, await loadRevision(context.tx, scope.revision.id), null, act)
  return value
}

export function closeThread(actor: Actor, input: CloseThreadInput): Promise<ActResult<null>> {
  return write(actor, 'close-thread', input, async (context) => {
    const { tx, rights, at, record } = context
    const { scope, thread } = await requireThread(tx, rights, input.threadId)
    requireOnThread(rights, scope, thread, 'thread:close')
    if (thread.state === 'closed') refuseClash('The thread is already closed.')
    requireThreadSeen(thread, input.seenVersion)
    const loaded = await loadRevision(tx, scope.revision.id)
    const done = await readDoneInput(context, loaded, scope, thread, input)
    await changeContent(context, loaded, null, async () => {
      await tx.thread.update({
        where: { id: thread.id },
        data: {
          state: 'closed',
          closedById: rights.userId,
          closedAt: at,
          closeReason: input.reason,
          doneJson: done === null ? null : JSON.stringify(done),
          version: { increment: 1 },
        },
      })
      await record({
        action: 'thread-closed',
        ...placeOfThread(scope, thread),
        details: { title: thread.title, reason: input.reason, ...(done === null ? {} : { done: describeDone(done) }) },
      })
    })
    return null
  })
}

/** What was done about it, which a must-change and an engineering query are not closed without. */
async function readDoneInput(
  { tx }: WriteContext,
  loaded: LoadedRevision,
  { fabricatorCompanyId }: RevisionScope,
  thread: Thread,
  { reason, done }: CloseThreadInput,
): Promise<Done | null> {
  const kind = readWord(thread.kind, THREAD_KINDS, 'kind of thread')
  if (needsDone({ kind })) {
    if (reason === '') refuseField('reason', 'missing', `is empty: state how the ${nameThreadKind(kind)} was settled`)
    if (done === undefined) {
      refuseField('done', 'missing', `is missing: point to what was done about the ${nameThreadKind(kind)}`)
    }
  }
  if (done === undefined) return null
  if (
    done.kind === 'no-change' &&
    !mayCloseUnchanged({ ...thread, kind }, fabricatorCompanyId, listTakenOff(loaded.record))
  ) {
    refuseField(
      'done',
      'unchanged',
      'does not settle a fabricator’s must-change: point to what was done, let the fabricator close it, or take it off this release',
    )
  }
  const base = { at: thread.openedAt, designHash: thread.baseDesignHash }
  return requireDone(listDoneOptions(loaded, await loadDoneBases(tx, loaded.record), base, fabricatorCompanyId), done)
}

/** An answered or closed thread goes back to open, with a reason. */
export function reopenThread(actor: Actor, input: ReopenThreadInput): Promise<ActResult<null>> {
  return write(actor, 'reopen-thread', input, async (context) => {
    const { tx, rights, record } = context
    const { scope, thread } = await requireThread(tx, rights, input.threadId)
    requireOnThread(rights, scope, thread, 'thread:close')
    if (thread.state === 'open') refuseClash('The thread is already open.')
    requireThreadSeen(thread, input.seenVersion)
    await changeContent(context, await loadRevision(tx, scope.revision.id), null, async () => {
      await tx.thread.update({
        where: { id: thread.id },
        data: {
          state: 'open',
          answeredById: null,
          answeredAt: null,
          closedById: null,
          closedAt: null,
          closeReason: null,
          doneJson: null,
          version: { increment: 1 },
        },
      })
      await addComment(context, scope, thread, { text: input.reason, isAnswer: false })
      await record({
        action: 'thread-reopened',
        ...placeOfThread(scope, thread),
        details: { title: thread.title, reason: input.reason },
      })
    })
    return null
  })
}

/** The author changes the text; the one before is kept. */
export function editComment(actor: Actor, input: EditCommentInput): Promise<ActResult<null>> {
  return write(actor, 'edit-comment', input, async (context) => {
    const { tx, rights, at, record } = context
    const comment = await tx.comment.findUnique({ where: { id: input.commentId } })
    if (comment === null) throw new NotFoundError('comment')
    const { scope, thread } = await requireThread(tx, rights, comment.threadId, 'comment')
    requireAtStage(rights, scope.subject, 'comment:edit', (subject) => ({
      ...makeThreadSubject(subject, thread),
      kind: 'comment',
      authorId: comment.authorId,
    }))
    if (comment.version !== input.seenVersion) {
      refuseStale(input.seenVersion, comment.version, [], 'the comment')
    }
    if (comment.text === input.text) return null
    await whileSigned(context, scope, async () => {
      await tx.commentEdit.create({
        data: {
          commentId: comment.id,
          version: comment.version,
          text: comment.text,
          at: comment.editedAt ?? comment.createdAt,
        },
      })
      await tx.comment.update({
        where: { id: comment.id },
        data: { text: input.text, version: { increment: 1 }, editedAt: at },
      })
      await record({
        action: 'comment-edited',
        ...placeOfThread(scope, thread),
        details: { title: thread.title, commentId: comment.id, before: comment.text, after: input.text },
      })
    })
    return null
  })
}

/** A thread for a person who may see it. */
export async function requireThread(
  tx: TransactionClient,
  rights: PersonRights,
  threadId: string,
  subjectName = 'thread',
) {
  const thread = await tx.thread.findUnique({ where: { id: threadId } })
  if (thread === null) throw new NotFoundError(subjectName)
  const scope = await requireRevisionInView(tx, rights, thread.revisionId, subjectName)
  if (!maySeeThread(rights, scope.subject, thread)) throw new NotFoundError(subjectName)
  return { thread, scope }
}

type ThreadAction = { [A in Action]: ActionSubjects[A] extends { kind: 'thread' } ? A : never }[Action]

function requireOnThread(rights: PersonRights, scope: RevisionScope, thread: Thread, action: ThreadAction): void {
  if (isAllowed(rights, action, makeThreadSubject(scope.subject, thread))) return
  requireAtStage(rights, scope.subject, action, (subject) => makeThreadSubject(subject, thread))
  throw new NotAllowedError(describeAct(action))
}

function requireThreadSeen(thread: Thread, seenVersion: number): void {
  if (thread.version !== seenVersion) refuseStale(seenVersion, thread.version, [], 'the thread')
}

type OpenedThread = Pick<
  Thread,
  | 'revisionId'
  | 'audienceCompanyId'
  | 'openedByCompanyId'
  | 'anchorKind'
  | 'anchorId'
  | 'anchorLabel'
  | 'anchorXMm'
  | 'anchorYMm'
  | 'kind'
  | 'title'
> &
  Partial<Pick<Thread, 'ownerId' | 'dueOn'>>

/** An open thread with its first comment, and its record in the trail. */
export async function createThread(
  context: WriteContext,
  scope: RevisionScope,
  { record: revision }: LoadedRevision,
  opened: Omit<OpenedThread, 'revisionId'>,
  text: string,
): Promise<{ readonly thread: Thread; readonly commentId: string }> {
  const { tx, rights, at, record } = context
  // What was done about it is told by the difference to the design as it was then.
  const isSettledByDone = needsDone({ kind: readWord(opened.kind, THREAD_KINDS, 'kind of thread') })
  if (isSettledByDone) {
    await keepDesignState(tx, { hash: revision.designHash, designJson: revision.designJson }, at)
  }
  const thread = await tx.thread.create({
    data: {
      ...opened,
      revisionId: revision.id,
      state: 'open',
      openedById: rights.userId,
      openedAt: at,
      baseDesignHash: isSettledByDone ? revision.designHash : null,
    },
  })
  const commentId = await addComment(context, scope, thread, { text, isAnswer: false })
  await record({
    action: 'thread-opened',
    ...placeOfThread(scope, thread),
    details: { title: thread.title, kind: thread.kind, anchor: thread.anchorLabel },
  })
  return { thread, commentId }
}

export async function addComment(
  { tx, rights, at }: WriteContext,
  scope: RevisionScope,
  thread: Pick<Thread, 'id'>,
  { text, isAnswer }: { text: string; isAnswer: boolean },
): Promise<string> {
  const last = await tx.comment.findFirst({ where: { threadId: thread.id }, orderBy: { ordinal: 'desc' } })
  const comment = await tx.comment.create({
    data: {
      threadId: thread.id,
      ordinal: (last?.ordinal ?? 0) + 1,
      authorId: rights.userId,
      companyId: getOwnCompanyId(rights, scope.revision.projectId),
      text,
      isAnswer,
      createdAt: at,
    },
  })
  return comment.id
}

/** Where a record about a thread belongs. */
export function placeOfThread(
  { revision }: RevisionScope,
  thread: Pick<Thread, 'id' | 'audienceCompanyId' | 'openedByCompanyId'>,
) {
  return {
    subject: { kind: 'thread' as const, id: thread.id },
    projectId: revision.projectId,
    revisionId: revision.id,
    // What the team says among itself is no fabricator's to read in an extract of the trail.
    companyId: thread.audienceCompanyId ?? thread.openedByCompanyId,
  }
}
