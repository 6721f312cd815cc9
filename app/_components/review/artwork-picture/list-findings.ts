import type { ItemView } from '@/lib/data'
import { compareVerdicts, getOutcomeVerdict } from '@/lib/engine/results'
import type { PictureFinding } from './picture-types'

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
    .sort((one, other) => compareVerdicts(one.verdict, other.verdict))
}
