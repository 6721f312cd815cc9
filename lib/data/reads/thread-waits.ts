import 'server-only'
import { findMentions } from '@/lib/mail'
import { isAllowed, isLate, nameThreadKind } from '@/lib/review'
import { getMembership, makeThreadSubject, mayOnRevision, maySeeThread } from '../records/authorization'
import { getPersonName, type RevisionRecord } from '../records/revision-record'
import type { Wait, WaitContext } from './wait'

type ThreadRow = RevisionRecord['threads'][number]
type CommentRow = ThreadRow['comments'][number]

/** At most one entry for each thread: to answer it, to close it, or to say something where one was mentioned. */
export function listThreadWaits(context: WaitContext): Wait[] {
  const { loaded, rights, subject } = context
  return loaded.record.threads
    .filter((thread) => maySeeThread(rights, subject, thread))
    .flatMap((thread) => {
      const wait = findAnswerWait(context, thread) ?? findMentionWait(context, thread)
      return wait === null ? [] : [wait]
    })
}

/** Open threads that the other side opened wait for an answer; answered ones for the person who may close them. */
function findAnswerWait(
  { loaded, snapshot: { today }, rights, subject, fabricatorCompanyId }: WaitContext,
  thread: ThreadRow,
): Wait | null {
  // The thread of a proposal that waits for a decision is settled by the decision.
  if (findOpenProposal(loaded.record, thread) !== undefined) return null
  const target = { tab: 'threads', id: thread.id } as const
  const threadSubject = makeThreadSubject(subject, thread)
  const kind = nameThreadKind(thread.kind)
  const isOverdue = isLate({ state: thread.state === 'open' ? 'open' : 'answered', dueOn: thread.dueOn }, today)
  const due = thread.dueOn === null ? '' : isOverdue ? `; it was due on ${thread.dueOn}` : `; due on ${thread.dueOn}`
  const owner = findOwner(loaded.record, thread)
  if (thread.state === 'open' && owner !== null) {
    const open = { since: thread.openedAt.toISOString(), reason: `The ${kind} "${thread.title}" is open${due}`, target }
    if (owner.userId === rights.userId) {
      return isAllowed(rights, 'thread:answer', threadSubject)
        ? { ...open, reason: `The ${kind} "${thread.title}" is yours to answer${due}`, nextAct: 'Answer it' }
        : null
    }
    const isLead = getMembership(rights, subject.projectId)?.role === 'lead'
    const isChasing = isOverdue && (isLead || thread.openedById === rights.userId)
    return isChasing && isAllowed(rights, 'thread:assign', threadSubject)
      ? { ...open, nextAct: 'Ask its owner, or change owner or day' }
      : null
  }
  const isFromOtherSide = thread.openedByCompanyId !== getMembership(rights, subject.projectId)?.companyId
  if (thread.state === 'open' && isFromOtherSide && isAllowed(rights, 'thread:answer', threadSubject)) {
    return {
      since: thread.openedAt.toISOString(),
      reason: `The ${kind} "${thread.title}" is open${due}`,
      nextAct: 'Answer it',
      target,
    }
  }
  const isOwn = thread.openedById === rights.userId || (fabricatorCompanyId !== null && !isFromOtherSide)
  // An answered must-change blocks until it is closed, so it waits for those who may close it.
  const isDue = isOwn || thread.kind === 'must-change'
  if (thread.state === 'answered' && isDue && isAllowed(rights, 'thread:close', threadSubject)) {
    return {
      since: (thread.answeredAt ?? thread.openedAt).toISOString(),
      reason: `The ${kind} "${thread.title}" was answered`,
      nextAct: 'Read the answer and close it',
      target,
    }
  }
  return null
}

/** Who is named to answer, as long as they are in the project: with an owner who left, everybody is asked again. */
function findOwner({ project }: RevisionRecord, { ownerId }: ThreadRow) {
  return ownerId === null ? null : (project.memberships.find(({ userId }) => userId === ownerId) ?? null)
}

function findOpenProposal({ proposals }: RevisionRecord, thread: ThreadRow) {
  return proposals.find(({ threadId, state }) => threadId === thread.id && state === 'proposed')
}

/**
 * Anyone who is mentioned is asked to say something: it waits until they wrote in the thread after the mention, or the
 * thread was answered or closed after it. Nobody's reading is recorded, and a page that was opened is no answer. Who may
 * only read is told by mail and has nothing to do.
 */
function findMentionWait({ loaded, rights, subject }: WaitContext, thread: ThreadRow): Wait | null {
  const { record } = loaded
  if (thread.state === 'closed' || !isAllowed(rights, 'thread:reply', makeThreadSubject(subject, thread))) return null
  const open = findOpenProposal(record, thread)
  // Then the decision on it waits for the same person already.
  if (open !== undefined && open.proposedById !== rights.userId && mayOnRevision(rights, 'proposal:decide', subject)) {
    return null
  }
  const people = record.project.memberships.map(({ userId }) => ({ id: userId, name: getPersonName(record, userId) }))
  const isMentioned = (text: string) => findMentions(text, people).some(({ id }) => id === rights.userId)
  const settledAt = thread.answeredAt?.getTime() ?? Number.NEGATIVE_INFINITY
  for (const comment of thread.comments) {
    if (comment.authorId === rights.userId || !isMentioned(comment.text)) continue
    const at = findMentionTime(comment, isMentioned)
    const hasSpoken = thread.comments.some(
      ({ authorId, createdAt, ordinal }) =>
        authorId === rights.userId &&
        (createdAt.getTime() > at.getTime() || (createdAt.getTime() === at.getTime() && ordinal > comment.ordinal)),
    )
    if (hasSpoken || settledAt > at.getTime()) continue
    return {
      since: at.toISOString(),
      reason: `${getPersonName(record, comment.authorId)} mentions you in the ${nameThreadKind(thread.kind)} "${thread.title}"`,
      nextAct: 'Read it and reply',
      target: { tab: 'threads', id: thread.id },
    }
  }
  return null
}

/** When the mention was written: with the comment, or in the edit that put it there. */
function findMentionTime({ createdAt, editedAt, edits }: CommentRow, isMentioned: (text: string) => boolean): Date {
  const first = edits[0]
  return editedAt === null || first === undefined || isMentioned(first.text) ? createdAt : editedAt
}
