/** Threads and their comments. */
import type { ThreadAnchor } from '@/lib/review'
import type { AttachmentView } from './checklist'
import type { CompanyView, PersonView } from './people'

/** What can be pointed to as done about a thread or a condition. */
export interface DoneOptions {
  /** It may be settled without a change, for a reason. */
  readonly mayStayUnchanged: boolean
  /** Differences of the design since then, each with its place. */
  readonly changes: readonly { readonly place: string; readonly sentence: string }[]
  readonly proposals: readonly { readonly id: string; readonly title: string }[]
  readonly files: readonly { readonly fileName: string; readonly sha256: string }[]
  readonly actions: readonly { readonly id: string; readonly text: string }[]
}

export interface CommentView {
  readonly id: string
  readonly author: PersonView
  readonly companyName: string
  readonly text: string
  readonly isAnswer: boolean
  readonly version: number
  readonly at: string
  readonly editedAt: string | null
  readonly earlierTexts: readonly { readonly text: string; readonly at: string }[]
  readonly attachments: readonly AttachmentView[]
  readonly mayEdit: boolean
}

export interface ThreadView {
  readonly id: string
  readonly revisionId: string
  readonly anchor: ThreadAnchor
  /** On an artwork file, in its own coordinates; null for a thread about all of it, or about something else. */
  readonly place: { readonly xMm: number; readonly yMm: number } | null
  readonly kind: 'note' | 'should-change' | 'must-change' | 'engineering-query'
  readonly title: string
  readonly state: 'open' | 'answered' | 'closed'
  readonly version: number
  readonly openedBy: PersonView
  readonly openedAt: string
  /** The fabricator that takes part; null is the team alone. */
  readonly company: CompanyView | null
  /** Who is to answer it; null where everybody who may answer is asked. */
  readonly owner: PersonView | null
  /** YYYY-MM-DD */
  readonly dueOn: string | null
  readonly isOverdue: boolean
  readonly answeredBy: PersonView | null
  readonly answeredAt: string | null
  readonly closedBy: PersonView | null
  readonly closedAt: string | null
  readonly closeReason: string | null
  /** What was done about it, in words; empty where nobody was asked. */
  readonly done: string
  /** What the person asking can point to when closing it; null where closing needs no more than a reason, or is not theirs. */
  readonly doneOptions: DoneOptions | null
  readonly comments: readonly CommentView[]
  /** What would become a note of the drawing; null where nothing is agreed yet, or changing the drawing is not theirs. */
  readonly drawingNote: { readonly text: string; readonly designVersion: number } | null
  readonly may: {
    readonly reply: boolean
    readonly answer: boolean
    readonly assign: boolean
    readonly close: boolean
    readonly reopen: boolean
  }
}
