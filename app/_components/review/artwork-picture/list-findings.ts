import type { ItemView } from '@/lib/data'
import { getOutcomeVerdict, type Verdict } from '@/lib/engine/results'
import type { PictureFinding } from './picture-types'

/** What fails comes first. */
const ORDER: readonly Verdict[] = ['fails', 'thin-margin', 'cannot-tell', 'not-computed', 'meets', 'not-applicable']

/** Every outcome that artwork shows at a place, the worst first. */
export function listArtworkFindings(items: readonly Pick<ItemView, 'itemId' | 'result'>[]): PictureFinding[] {
  return items
    .flatMap(({ itemId, result }) =>
      result.outcomes.flatMap((outcome, index): PictureFinding[] =>
        outcome.artworkAt === undefined
          ? []
          : [
              {
                key: `${itemId} ${index}`,
                itemId,
                verdict: getOutcomeVerdict(outcome),
                summary: outcome.summary,
                spot: outcome.artworkAt,
              },
            ],
      ),
    )
    .sort((one, other) => ORDER.indexOf(one.verdict) - ORDER.indexOf(other.verdict))
}
