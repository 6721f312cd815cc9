import type { ItemBasis, ItemResult } from './evaluation'

/** In the order in which lists show them: what was calculated, what somebody typed, what a person judges. */
export const ITEM_BASES: readonly ItemBasis[] = ['computed', 'stated', 'judgment']

/** How many items of each basis came to each verdict: a typed yes never counts as a calculation that holds. */
export type VerdictTally = Readonly<Record<ItemBasis, Readonly<Record<string, number>>>>

export const EMPTY_TALLY: VerdictTally = { computed: {}, stated: {}, judgment: {} }

export function tallyVerdicts(items: readonly Pick<ItemResult, 'basis' | 'verdict'>[]): VerdictTally {
  const tally: Record<ItemBasis, Record<string, number>> = { computed: {}, stated: {}, judgment: {} }
  for (const { basis, verdict } of items) tally[basis][verdict] = (tally[basis][verdict] ?? 0) + 1
  return tally
}
