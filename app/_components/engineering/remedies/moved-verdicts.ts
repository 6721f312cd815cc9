import type { Evaluation, ItemResult } from '@/lib/engine'

/** An item of the checklist whose verdict differs between two evaluations. */
export interface MovedVerdict {
  readonly itemId: string
  /** The item's title for the later verdict. */
  readonly name: string
  readonly before: ItemResult['verdict']
  readonly after: ItemResult['verdict']
  readonly headline: string
}

/** Items whose verdict moves, in the order of the catalogue. */
export function listMovedVerdicts(before: Evaluation, after: Evaluation): MovedVerdict[] {
  return after.items.flatMap((item) => {
    const earlier = before.items.find(({ itemId }) => itemId === item.itemId)
    if (earlier === undefined || earlier.verdict === item.verdict) return []
    return [
      {
        itemId: item.itemId,
        name: nameItem(item.itemId),
        before: earlier.verdict,
        after: item.verdict,
        headline: item.headline,
      },
    ]
  })
}

/** Ids are nouns: `bend-strain` reads as `Bend strain`. */
function nameItem(itemId: string): string {
  const words = itemId.replaceAll('-', ' ')
  return words.charAt(0).toUpperCase() + words.slice(1)
}
