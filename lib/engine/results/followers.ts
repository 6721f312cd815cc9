import type { ItemResult } from './item'

/** Verdicts that something else may bring, the worse one higher. */
const BADNESS: Readonly<Record<string, number>> = { fails: 2, 'thin-margin': 1 }

/**
 * Drops what no longer holds of `followsFrom`, where results were put together from several evaluations: an item follows only from items that are there, stand by
 * themselves and are at least as bad.
 */
export function keepFollowers(items: readonly ItemResult[]): readonly ItemResult[] {
  if (items.every(({ followsFrom }) => followsFrom === undefined)) return items
  const byId = new Map(items.map((item) => [item.itemId, item]))
  return items.map((item) => {
    const { followsFrom, ...standing } = item
    if (followsFrom === undefined) return item
    const badness = BADNESS[item.verdict] ?? 0
    const isBrought =
      badness > 0 &&
      followsFrom.length > 0 &&
      followsFrom.every((id) => {
        const root = byId.get(id)
        return root !== undefined && root.followsFrom === undefined && (BADNESS[root.verdict] ?? 0) >= badness
      })
    return isBrought ? item : standing
  })
}
