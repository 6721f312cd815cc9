import { nameThreadKind } from '../snapshot'
import { because, countInputs, word } from './word'

/** What people say to each other on a revision: threads, files beside them, proposed changes. */
export const THREAD_WORDS = {
  'thread-opened': word<{ title: string; kind: string; anchor: string }>()({
    subject: 'thread',
    audience: 'thread-readers',
    sentence: (details) => `opened ${nameThreadKind(details.text('kind'))} "${details.text('title')}"`,
  }),
  'thread-replied': word<{ title: string }>()({
    subject: 'thread',
    audience: 'thread-readers',
    sentence: (details) => `replied to "${details.text('title')}"`,
  }),
  'thread-answered': word<{ title: string }>()({
    subject: 'thread',
    audience: 'thread-readers',
    sentence: (details) => `answered "${details.text('title')}"`,
  }),
  'thread-closed': word<{ title: string; reason: string; done?: string }>()({
    subject: 'thread',
    sentence: (details) => {
      const done = details.text('done')
      return `closed "${details.text('title')}"${because(details)}${done === '' ? '' : ` (${done})`}`
    },
  }),
  'thread-reopened': word<{ title: string; reason: string }>()({
    subject: 'thread',
    audience: 'thread-readers',
    sentence: (details) => `opened "${details.text('title')}" again${because(details)}`,
  }),
  'thread-assigned': word<{ title: string; owner: string; dueOn: string; before: { owner: string; dueOn: string } }>()({
    subject: 'thread',
    audience: 'thread-readers',
    sentence: (details) => {
      const [owner, dueOn] = [details.text('owner'), details.text('dueOn')]
      const parts = [
        owner === '' ? 'without an owner' : `owner ${owner}`,
        dueOn === '' ? 'without a due day' : `due ${dueOn}`,
      ]
      return `set "${details.text('title')}": ${parts.join(', ')}`
    },
  }),
  'thread-noted': word<{ title: string; note: string }>()({
    subject: 'thread',
    sentence: (details) => `added the drawing note "${details.text('note')}" from "${details.text('title')}"`,
  }),
  'comment-edited': word<{ title: string; commentId: string; before: string; after: string }>()({
    subject: 'thread',
    audience: 'thread-readers',
    sentence: (details) => `edited a comment in "${details.text('title')}"`,
  }),
  'file-attached': word<{
    fileName: string
    sha256: string
    itemId: string | null
    commentId: string | null
    /** Absent where it stands beside an item or a comment. */
    actionId?: string
    needId?: string
  }>()({
    subject: 'attachment',
    sentence: (details) => `attached ${details.text('fileName')}`,
  }),
  'file-removed': word<{ fileName: string; sha256: string }>()({
    subject: 'attachment',
    sentence: (details) => `removed the attachment ${details.text('fileName')}`,
  }),
  'proposal-made': word<{
    title: string
    baseVersion: number
    baseHash: string
    proposedHash: string
    changeCount: number
    changes: string[]
  }>()({
    subject: 'proposal',
    audience: 'proposal-readers',
    sentence: (details) => `proposed "${details.text('title')}" (${countInputs(details)})`,
  }),
  'proposal-accepted': word<{ title: string; reason: string; designVersion?: number }>()({
    subject: 'proposal',
    audience: 'proposal-readers',
    sentence: (details) => `accepted the proposal "${details.text('title')}"${because(details)}`,
  }),
  'proposal-declined': word<{ title: string; reason: string; designVersion?: number }>()({
    subject: 'proposal',
    audience: 'proposal-readers',
    sentence: (details) => `declined the proposal "${details.text('title')}"${because(details)}`,
  }),
  'proposal-withdrawn': word<{ title: string; reason: string; designVersion?: number }>()({
    subject: 'proposal',
    audience: 'proposal-readers',
    sentence: (details) => `withdrew the proposal "${details.text('title')}"${because(details)}`,
  }),
} as const
