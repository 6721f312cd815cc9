import type { DraftEvaluation, ItemResult } from '@/lib/engine'

/** An item of the checklist whose verdict differs between two evaluations. */
export interface MovedVerdict {
  readonly itemId: string
  /** In the wording of the review's version of the catalogue. */
  readonly question: string
  readonly before: ItemResult['verdict']
  readonly after: ItemResult['verdict']
  readonly headline: string
}

/**
 * Items whose verdict moves, in the order of the catalogue.
 *
 * @param items  that both were evaluated by
 */
export function listMovedVerdicts(
  before: DraftEvaluation,
  after: DraftEvaluation,
  items: readonly { readonly id: string; readonly question: string }[],
): MovedVerdict[] {
  const questions = new Map(items.map(({ id, question }) => [id, question]))
  return after.items.flatMap((item) => {
    const earlier = before.items.find(({ itemId }) => itemId === item.itemId)
    if (earlier === undefined || earlier.verdict === item.verdict) return []
    return [
      {
        itemId: item.itemId,
        question: questions.get(item.itemId) ?? item.itemId,
        before: earlier.verdict,
        after: item.verdict,
        headline: item.headline,
      },
    ]
  })
}
