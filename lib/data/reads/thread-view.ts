import 'server-only'
import { now } from '@/lib/config'
import type { Design } from '@/lib/engine'
import {
  type Action,
  describeDone,
  isAllowed,
  isLate,
  mayCloseUnchanged,
  needsDone,
  type RevisionSubject,
} from '@/lib/review'
import {
  makeThreadSubject,
  mayOnRevision,
  maySeeThread,
  type PersonRights,
  type RevisionScope,
} from '../records/authorization'
import { listTakenOff } from '../records/declaration-record'
import { listDoneOptions } from '../records/done-since'
import type { LoadedRevision } from '../records/loaded-revision'
import { toAttachmentView, toCompanyView, toPersonView } from '../records/part-views'
import { getCompanyName, type RevisionRecord } from '../records/revision-record'
import { makeReviewThread } from '../records/snapshot'
import type { CommentView, ThreadView } from '../views'

type ThreadRow = RevisionRecord['threads'][number]

/** Threads of a revision that the person may see. */
export function listThreadViews(
  loaded: LoadedRevision,
  bases: ReadonlyMap<string, Design>,
  rights: PersonRights,
  { subject, fabricatorCompanyId }: RevisionScope,
): ThreadView[] {
  const { record } = loaded
  return record.threads
    .filter((thread) => maySeeThread(rights, subject, thread))
    .map((thread) => {
      const view = toThreadView(record, thread, rights, subject)
      if (!view.may.close || !needsDone(view)) return view
      const base = { at: thread.openedAt, designHash: thread.baseDesignHash }
      const mayStayUnchanged = mayCloseUnchanged(
        { ...thread, kind: view.kind },
        fabricatorCompanyId,
        listTakenOff(record),
      )
      return {
        ...view,
        doneOptions: { ...listDoneOptions(loaded, bases, base, fabricatorCompanyId), mayStayUnchanged },
      }
    })
}

function toThreadView(
  record: RevisionRecord,
  thread: ThreadRow,
  rights: PersonRights,
  revision: RevisionSubject,
): ThreadView {
  const { anchor, kind, state, closed } = makeReviewThread(record, thread)
  const subject = makeThreadSubject(revision, thread)
  const may = (action: Action & `thread:${string}`) => isAllowed(rights, action, subject)
  const person = (userId: string | null) => (userId === null ? null : toPersonView(record, userId))
  return {
    id: thread.id,
    revisionId: thread.revisionId,
    anchor,
    place:
      thread.anchorXMm === null || thread.anchorYMm === null ? null : { xMm: thread.anchorXMm, yMm: thread.anchorYMm },
    kind,
    title: thread.title,
    state,
    version: thread.version,
    openedBy: toPersonView(record, thread.openedById),
    openedAt: thread.openedAt.toISOString(),
    company: thread.audienceCompany === null ? null : toCompanyView(thread.audienceCompany),
    owner: person(thread.ownerId),
    dueOn: thread.dueOn,
    isOverdue: isLate({ state, dueOn: thread.dueOn }, now().toISOString().slice(0, 10)),
    answeredBy: person(thread.answeredById),
    answeredAt: thread.answeredAt?.toISOString() ?? null,
    closedBy: person(thread.closedById),
    closedAt: thread.closedAt?.toISOString() ?? null,
    closeReason: thread.closeReason,
    done: closed?.done == null ? '' : describeDone(closed.done),
    doneOptions: null,
    drawingNote: mayOnRevision(rights, 'revision:edit', revision) ? findDrawingNote(record, thread) : null,
    comments: thread.comments.map((comment) => toCommentView(record, comment, rights, subject)),
    may: {
      reply: may('thread:reply'),
      answer: state === 'open' && may('thread:answer'),
      assign: state !== 'closed' && may('thread:assign'),
      close: state !== 'closed' && may('thread:close'),
      reopen: state !== 'open' && may('thread:close'),
    },
  }
}

/** The last words that were marked as the answer, or else those in which the thread was closed. */
function findDrawingNote({ designVersion }: RevisionRecord, thread: ThreadRow): ThreadView['drawingNote'] {
  if (thread.state === 'open' || thread.anchorKind === 'proposal') return null
  const answer = thread.comments.findLast(({ isAnswer }) => isAnswer)?.text ?? thread.closeReason ?? ''
  return answer.trim() === '' ? null : { text: answer.trim(), designVersion }
}

function toCommentView(
  record: RevisionRecord,
  comment: ThreadRow['comments'][number],
  rights: PersonRights,
  subject: ReturnType<typeof makeThreadSubject>,
): CommentView {
  return {
    id: comment.id,
    author: toPersonView(record, comment.authorId),
    companyName: getCompanyName(record, comment.companyId),
    text: comment.text,
    isAnswer: comment.isAnswer,
    version: comment.version,
    at: comment.createdAt.toISOString(),
    editedAt: comment.editedAt?.toISOString() ?? null,
    earlierTexts: comment.edits.map(({ text, at }) => ({ text, at: at.toISOString() })),
    attachments: comment.attachments
      .filter((file) => file.removedAt === null)
      .map((file) => toAttachmentView(record, file)),
    mayEdit: isAllowed(rights, 'comment:edit', { ...subject, kind: 'comment', authorId: comment.authorId }),
  }
}
