import type { RevisionView } from '@/lib/data'
import { needsLookedAt } from '@/lib/review'

const STATES = ['open', 'meets', 'concern', 'not-applicable'] as const
type BulkState = (typeof STATES)[number]
type Item = Pick<RevisionView['items'][number], 'legalStates' | 'result'>

/** Answers that all of these items can be given at once, and how many of the items rule out "meets". */
export function listBulkStates(items: readonly Item[]): {
  readonly states: readonly BulkState[]
  readonly withoutMeets: number
} {
  // Where somebody looked is said item by item.
  const takes = (item: Item, state: BulkState) => item.legalStates.includes(state) && !needsLookedAt(item.result, state)
  return {
    states: items.length === 0 ? [] : STATES.filter((state) => items.every((item) => takes(item, state))),
    withoutMeets: items.filter((item) => !takes(item, 'meets')).length,
  }
}
