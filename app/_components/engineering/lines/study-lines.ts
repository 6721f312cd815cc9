import { buildContext, type Design } from '@/lib/engine'
import { type LineStudy, listStudiedLines, type StudiedLine, studyLine } from '@/lib/engine/line-study'
import type { StoredRevision } from '../draft'

/** One line of the design with what it comes to; null where its section has no solution. */
export interface Studied {
  readonly studied: StudiedLine
  readonly study: LineStudy | null
}

export interface LineStudies {
  readonly lines: readonly Studied[]
  /** Limit of near-end crosstalk, percent of the step. */
  readonly crosstalkLimitPct: number
}

/**
 * All lines of a design, one after the other; between field solutions the page gets its turn.
 *
 * @returns null where it was left
 */
export async function studyLines(
  design: Design,
  { limits, testedLives }: Pick<StoredRevision, 'limits' | 'testedLives'>,
  leaving: AbortSignal,
): Promise<LineStudies | null> {
  const context = buildContext(design, { limits, testedLives })
  const lines: Studied[] = []
  for (const studied of listStudiedLines(context)) {
    const steps = studyLine(studied)
    for (;;) {
      const step = steps.next()
      if (step.done === true) {
        lines.push({ studied, study: step.value })
        break
      }
      await new Promise((resolve) => setTimeout(resolve, 0))
      if (leaving.aborted) return null
    }
  }
  return { lines, crosstalkLimitPct: context.getLimit('nearEndCrosstalkPct').value }
}
