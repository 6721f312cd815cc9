import type { RevisionTab } from '@/lib/addresses'

/**
 * What an unanswered question costs: `blocking`, the part cannot be begun; `major`, the fabricator would guess or send
 * a query; `minor`, the order goes on while it is asked. Common practice, no published source.
 */
export type DrawingGapSeverity = 'blocking' | 'major' | 'minor'

/** The one record of what the severities are called, worst first. */
export const DRAWING_GAP_WORDS: Readonly<Record<DrawingGapSeverity, string>> = {
  blocking: 'Needed before work can start',
  major: 'Would be assumed, or come back as a query',
  minor: 'Asked while the order is in progress',
}

/** Something that a fabricator who reads the drawing sheet would still ask. */
export interface DrawingGap {
  readonly severity: DrawingGapSeverity
  /** As they would ask it. */
  readonly question: string
  /** Of the missing input in the design: `['bends', 0, 'use']`. */
  readonly path: readonly (string | number)[]
  /** Where it is typed in. */
  readonly target: { readonly tab: RevisionTab; readonly id: string }
}
