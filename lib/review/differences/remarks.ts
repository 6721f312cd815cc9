import type { RevisionTab } from '@/lib/addresses'
import type { ReviewSnapshot, ReviewThread } from '../snapshot'

/** What somebody said in the review, in words, and where it stands. */
export interface Remark {
  /** `the answer to "..."` */
  readonly where: string
  readonly text: string
  /** Of an answer or a waiver: the item that it is about; empty for anything else. */
  readonly itemId: string
  readonly saidById: string
  readonly target: { readonly tab: RevisionTab; readonly id: string }
}

/**
 * Words that a signature rests on. Of a thread that is where the talk ended, its last word and the reason for which it was closed: what is weighed
 * on the way is no statement.
 */
export function listRemarks(snapshot: ReviewSnapshot): Remark[] {
  const question = (itemId: string) => snapshot.items.find(({ id }) => id === itemId)?.question ?? itemId
  const ofItem = (where: string, itemId: string, saidById: string, text: string): Remark => ({
    where: `${where} "${question(itemId)}"`,
    text,
    itemId,
    saidById,
    target: { tab: 'checklist', id: itemId },
  })
  return [
    ...snapshot.answers
      .filter(({ state }) => state !== 'open')
      .map(({ itemId, reason, answeredBy }) => ofItem('the answer to', itemId, answeredBy, reason)),
    ...snapshot.waivers
      .filter(({ state }) => state !== 'declined')
      .map(({ itemId, reason, proposedBy, consequence = '', decisionNote }) =>
        ofItem('the waiver of', itemId, proposedBy, [reason, consequence, decisionNote].join(' ').trim()),
      ),
    ...listLastDeclarations(snapshot).flatMap(({ companyName, madeBy, note, conditions }) =>
      [note, ...conditions.filter(({ state }) => state !== 'declined').map(({ text }) => text)].map(
        (text): Remark => ({
          where: `the declaration of ${companyName}`,
          text,
          itemId: '',
          saidById: madeBy,
          target: { tab: 'sign-off', id: 'declaration' },
        }),
      ),
    ),
    ...snapshot.actions
      .filter(({ state }) => state !== 'dropped')
      .map(
        ({ id, number, text }): Remark => ({
          where: `action ${number}`,
          text,
          itemId: '',
          saidById: '',
          target: { tab: 'actions', id },
        }),
      ),
    ...snapshot.threads.flatMap(listLastWords),
  ].filter(({ text }) => text !== '')
}

function listLastWords({ id, title, comments, closed }: ReviewThread): Remark[] {
  const target = { tab: 'threads', id } as const
  const last = comments.at(-1)
  return [
    ...(last === undefined
      ? []
      : [{ where: `the last word in "${title}"`, text: last.text, itemId: '', saidById: last.authorId, target }]),
    ...(closed === null
      ? []
      : [{ where: `the closing of "${title}"`, text: closed.reason, itemId: '', saidById: closed.by, target }]),
  ]
}

function listLastDeclarations({ declarations }: ReviewSnapshot) {
  return declarations.filter(
    (one) => !declarations.some((other) => other.companyId === one.companyId && other.madeAt > one.madeAt),
  )
}
