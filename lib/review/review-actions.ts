/** What an action is due before; `date` for a day of its own. */
export const ACTION_DUES = ['before-release', 'before-first-article', 'before-series', 'date'] as const
export type ActionDue = (typeof ACTION_DUES)[number]

/** The one record of what they are called. */
export const ACTION_DUE_WORDS: Readonly<Record<ActionDue, string>> = {
  'before-release': 'before release',
  'before-first-article': 'before the first article',
  'before-series': 'before series production',
  date: 'by a date',
}

export const ACTION_STATES = ['open', 'reported', 'closed', 'dropped'] as const
export type ActionState = (typeof ACTION_STATES)[number]

export const ACTION_STATE_WORDS: Readonly<Record<ActionState, string>> = {
  open: 'open',
  reported: 'reported done',
  closed: 'closed',
  dropped: 'dropped',
}

/** What an action comes from. */
export const ACTION_ORIGINS = ['revision', 'thread', 'condition', 'waiver', 'item', 'meeting'] as const
export type ActionOriginKind = (typeof ACTION_ORIGINS)[number]

/** Something that somebody is to do, taken on in a review. Times are ISO 8601 in UTC. */
export interface ReviewAction {
  readonly id: string
  /** Within the revision, from 1. */
  readonly number: number
  /** `label` as it read when the action was taken on. */
  readonly origin: { readonly kind: ActionOriginKind; readonly id: string; readonly label: string }
  /** The fabricator that sees it beside the team; null is the team alone. */
  readonly audienceCompanyId: string | null
  readonly text: string
  readonly ownerId: string
  readonly ownerName: string
  readonly ownerCompanyName: string
  readonly due: ActionDue
  /** YYYY-MM-DD: the date itself, or the day planned for the event; null where no day is known. */
  readonly dueOn: string | null
  readonly isAfterRelease: boolean
  readonly state: ActionState
  readonly takenOnByName: string
  readonly takenOnAt: string
  readonly evidence: string
  readonly files: readonly { readonly fileName: string; readonly sha256: string }[]
  readonly reportedByName: string | null
  readonly reportedAt: string | null
  readonly closedByName: string | null
  readonly closedAt: string | null
  readonly closeNote: string
}

/** Neither closed nor dropped: one that is only reported done still waits for another person to look at it. */
export function isPending({ state }: Pick<ReviewAction, 'state'>): boolean {
  return state === 'open' || state === 'reported'
}

/** @param day  YYYY-MM-DD */
export function isOverdue(action: Pick<ReviewAction, 'state' | 'dueOn'>, day: string): boolean {
  return isPending(action) && action.dueOn !== null && action.dueOn < day
}

/** `before the first article, planned for 2027-03-01`; `by 2027-03-01` */
export function describeDue({ due, dueOn }: Pick<ReviewAction, 'due' | 'dueOn'>): string {
  if (due === 'date') return dueOn === null ? 'by a date that is not stated' : `by ${dueOn}`
  return dueOn === null ? ACTION_DUE_WORDS[due] : `${ACTION_DUE_WORDS[due]}, planned for ${dueOn}`
}

/** Of an action, what a signature covers: that it is to be done, by whom and by when. Whether it was done comes later. */
export interface SignedAction {
  readonly number: number
  readonly text: string
  readonly owner: string
  readonly due: ActionDue
  readonly dueOn: string | null
}

export function listSignedActions(actions: readonly ReviewAction[]): SignedAction[] {
  return actions
    .filter(({ state, isAfterRelease }) => state !== 'dropped' && !isAfterRelease)
    .map(({ number, text, ownerName, due, dueOn }) => ({ number, text, owner: ownerName, due, dueOn }))
}
