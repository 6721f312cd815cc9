import type { ItemBasis, ItemResult } from './item'

/** In the order in which lists show them: what was calculated, typed and compared, stated by somebody, judged by somebody. */
export const ITEM_BASES: readonly ItemBasis[] = ['computed', 'typed', 'stated', 'judgment']

/** Where a tally counts what follows from another item: a cause counts once, as the verdict of its root. */
const FOLLOWS = 'follows'

/**
 * How many items of each basis came to each verdict: a typed number or a yes never counts as a calculation that holds. What follows from
 * another item is counted as that, whatever its verdict.
 */
export type VerdictTally = Readonly<Record<ItemBasis, Readonly<Record<string, number>>>>

export const EMPTY_TALLY: VerdictTally = { computed: {}, typed: {}, stated: {}, judgment: {} }

export function tallyVerdicts(items: readonly Pick<ItemResult, 'basis' | 'verdict' | 'followsFrom'>[]): VerdictTally {
  const tally: Record<ItemBasis, Record<string, number>> = { computed: {}, typed: {}, stated: {}, judgment: {} }
  for (const { basis, verdict, followsFrom } of items) {
    const key = followsFrom === undefined ? verdict : FOLLOWS
    tally[basis][key] = (tally[basis][key] ?? 0) + 1
  }
  return tally
}
