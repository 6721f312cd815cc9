import type { MailText } from './letter'
import { renderLetter } from './letter'

export const REVIEW_ACTION_EVENTS = ['taken-on', 'changed', 'reported', 'reopened', 'closed', 'dropped'] as const
export type ReviewActionEvent = (typeof REVIEW_ACTION_EVENTS)[number]

export interface ReviewActionNotice<P> {
  readonly kind: 'action'
  readonly place: P
  readonly event: ReviewActionEvent
  readonly number: number
  /** Null where the reader must not see it. */
  readonly text: string | null
  readonly by: string
  /** `before the first article, planned for 2027-03-01` */
  readonly due: string
  readonly isOwner: boolean
  /** The reason, or the evidence; null where there is none that the reader may see. */
  readonly said: string | null
}

const VERBS: Readonly<Record<ReviewActionEvent, string>> = {
  'taken-on': 'took on',
  changed: 'changed owner or due date of',
  reported: 'reported done',
  reopened: 'reopened',
  closed: 'closed',
  dropped: 'dropped',
}

/** @param name  of the revision, as its reader may know it */
export function composeReviewActionMail<P extends { readonly href: string }>(
  { place, event, number, text, by, due, isOwner, said }: ReviewActionNotice<P>,
  name: string,
  footer: string,
): MailText {
  const isToDo = event === 'taken-on' || event === 'changed' || event === 'reopened'
  return renderLetter({
    subject: `${name}: ${by} ${VERBS[event]} action ${number}`,
    paragraphs: [
      `${by} ${VERBS[event]} action ${number} of ${name}${text === null ? '' : `: ${text}`}`,
      ...(isToDo && isOwner
        ? [`You own this action. It is due ${due}. When it is done, report it with the evidence.`]
        : []),
      ...(event === 'reported' && !isOwner ? ['Someone other than its owner checks the evidence and closes it.'] : []),
    ],
    quote: said,
    act: { label: 'Open the action', href: place.href },
    footer,
  })
}
