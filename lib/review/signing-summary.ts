import { ITEM_BASES, type ItemBasis } from '@/lib/engine'
import { describeFollows, type ItemState, listItemStates } from './answers'
import { describeChanges } from './signature-changes'
import { buildSignedContent, type SignedContent } from './signed-content'
import type { ReviewSnapshot } from './snapshot'

/** What a signer should have in view: what is not simply met, by how it stands. */
export const SIGNING_GROUPS = [
  'failed',
  'cannot-tell',
  'waived',
  'concern',
  'thin-margin',
  'not-decided',
  'ruled-out',
  'follows',
] as const
export type SigningGroup = (typeof SIGNING_GROUPS)[number]

export interface SigningEntry {
  readonly group: SigningGroup
  readonly itemId: string
  readonly question: string
  /** The numbers, or the words of the person who answered or waived. */
  readonly text: string
}

/** The last signature of the revision, voided or not, with what it covered. */
export interface LastSignature {
  readonly name: string
  readonly signedAt: string
  readonly content: SignedContent
}

export interface SigningSummary {
  readonly entries: readonly SigningEntry[]
  /** How many items are met or do not apply. */
  readonly quietCount: number
  /** How many items are met, by what that rests on: a typed yes is not a calculation. */
  readonly metBy: Readonly<Record<ItemBasis, number>>
  /** Null where nobody has signed the revision before. */
  readonly sinceLast: { readonly name: string; readonly signedAt: string; readonly changes: readonly string[] } | null
}

/** What is signed, in brief: each failure, waiver, concern and thin margin, and what changed since the last signature. */
export function summarizeSigning(snapshot: ReviewSnapshot, last: LastSignature | null): SigningSummary {
  const itemStates = listItemStates(snapshot)
  const entries = itemStates.flatMap(({ item, result, state, decidedBy, answer, waiver, follows }): SigningEntry[] => {
    const add = (group: SigningGroup, text: string) => [{ group, itemId: item.id, question: item.question, text }]
    const headline = result?.headline ?? 'It has no result.'
    if (follows.length > 0) {
      const word = state === 'waived' ? ', and is waived with it' : ''
      return add('follows', `${describeFollows(follows)}${word}. ${headline}`)
    }
    if (state === 'waived' && waiver !== null) {
      return add('waived', `${headline} Waived by ${waiver.decidedByName ?? 'a lead'}: ${waiver.reason}`)
    }
    if (result?.verdict === 'fails') return add('failed', headline)
    if (result?.verdict === 'cannot-tell') {
      const words = decidedBy !== 'person' || answer === null ? '' : ` ${answer.answeredByName}: ${answer.reason}`
      return add('cannot-tell', `${headline}${words}`)
    }
    if (state === 'concern' && decidedBy === 'person') {
      const reason = answer === null || answer.reason === '' ? headline : answer.reason
      return add('concern', answer === null ? reason : `${answer.answeredByName}: ${reason}`)
    }
    if (result?.verdict === 'thin-margin') return add('thin-margin', headline)
    // The design does not rule it out: somebody says so in its place.
    if (state === 'not-applicable' && decidedBy === 'person' && answer !== null) {
      return add('ruled-out', `${headline} ${answer.answeredByName}: ${answer.reason}`)
    }
    return state === 'open' ? add('not-decided', headline) : []
  })
  return {
    entries,
    quietCount: itemStates.length - entries.length,
    metBy: countMet(itemStates),
    sinceLast:
      last === null
        ? null
        : {
            name: last.name,
            signedAt: last.signedAt,
            changes: describeChanges(last.content, buildSignedContent(snapshot)).map(({ sentence }) => sentence),
          },
  }
}

function countMet(itemStates: readonly ItemState[]): Record<ItemBasis, number> {
  const count = (basis: ItemBasis) => itemStates.filter((item) => item.state === 'meets' && item.basis === basis).length
  return Object.fromEntries(ITEM_BASES.map((basis) => [basis, count(basis)])) as Record<ItemBasis, number>
}
