import type { RevisionTab } from '@/lib/addresses'
import type { ReviewSnapshot } from '../snapshot'

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

/** Words that a signature covers. What is talked over in threads is no statement: it comes to an answer, a condition or an action. */
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
  ].filter(({ text }) => text !== '')
}

function listLastDeclarations({ declarations }: ReviewSnapshot) {
  return declarations.filter(
    (one) => !declarations.some((other) => other.companyId === one.companyId && other.madeAt > one.madeAt),
  )
}
