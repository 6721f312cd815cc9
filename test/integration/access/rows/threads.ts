import * as data from '@/lib/data'
import { type AccessRow, BRACKENFOLD, FABRICATORS, LEADS, PROJECT, REVIEWERS, TEAM, UNSEEN } from './row'

/** Threads. */
export const THREAD_ROWS: readonly AccessRow[] = [
  {
    name: 'openThread',
    run: (a, s) =>
      data.openThread(a, {
        revisionId: s.reviewId,
        anchor: { kind: 'layer', id: 'no-such-layer' },
        kind: 'note',
        title: 'Title',
        text: 'Text',
      }),
    reached: 'invalid',
    may: [...REVIEWERS, ...FABRICATORS],
    seenBy: 'revision',
  },
  {
    name: 'replyToThread',
    of: "a fabricator's, closed",
    run: (a, s) => data.replyToThread(a, { threadId: s.closedThreadId, text: 'Text', isAnswer: false }),
    reached: 'clash',
    may: [...REVIEWERS, ...BRACKENFOLD],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'replyToThread',
    of: "the team's own",
    run: (a, s) => data.replyToThread(a, { threadId: s.teamThreadId, text: 'Text', isAnswer: false }),
    reached: 'ok',
    may: REVIEWERS,
    seenBy: 'draft',
  },
  {
    name: 'closeThread',
    run: (a, s) => data.closeThread(a, { threadId: s.brackenfoldThreadId, seenVersion: UNSEEN, reason: 'done' }),
    reached: 'stale',
    may: [...LEADS, ...BRACKENFOLD],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'assignThread',
    run: (a, s) =>
      data.assignThread(a, { threadId: s.brackenfoldThreadId, seenVersion: UNSEEN, ownerId: '', dueOn: '2027-03-01' }),
    reached: 'stale',
    may: [...REVIEWERS, ...BRACKENFOLD],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'noteOnDrawing',
    of: "a fabricator's, closed",
    run: (a, s) => data.noteOnDrawing(a, { threadId: s.closedThreadId, seenVersion: UNSEEN, text: 'Note' }),
    reached: 'stale',
    may: TEAM,
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'getLiveStart',
    run: (a, s) => data.getLiveStart(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'listLiveEvents',
    run: (a, s) => data.listLiveEvents(a, s.reviewId, 0),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'listThreadReaders',
    run: (a, s) => data.listThreadReaders(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'reopenThread',
    run: (a, s) => data.reopenThread(a, { threadId: s.closedThreadId, seenVersion: UNSEEN, reason: 'again' }),
    reached: 'stale',
    may: [...LEADS, ...BRACKENFOLD],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'editComment',
    run: (a, s) => data.editComment(a, { commentId: s.brackenfoldCommentId, seenVersion: UNSEEN, text: 'other' }),
    reached: 'stale',
    may: ['fabricator'],
    seenBy: 'brackenfold-thread',
  },
]
