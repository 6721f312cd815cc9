/**
 * What kind of ground a number stands on, and the word that is shown for it: the one declaration. Limits, results,
 * reports and screens follow the kind of the source, so that nothing known at second hand is shown as read.
 */
export const SOURCE_KINDS = {
  /** Opened and read, in the part that is cited. */
  published: 'published',
  /** Only the scope or the abstract was read. */
  abstract: 'scope or abstract read',
  /** Known through another text, which `quotedBy` names: "X, as quoted by Y". */
  quoted: 'quoted',
  /** Recalled, not read in the text that it is attributed to. */
  memory: 'from memory',
  /** What the trade does and no published standard says. */
  'common-practice': 'common practice',
  /** A bound that we set ourselves, for want of a source. */
  'own-choice': 'our choice',
  /** Computed by ourselves with other tools, mesh or sample size stated; not published. */
  'own-computation': 'own computation',
  /** Follows from definitions: arithmetic, geometry, conservation. */
  exact: 'exact arithmetic',
} as const

export type SourceKind = keyof typeof SOURCE_KINDS

interface Citation {
  readonly title: string
  /** Number of the standard, test method or report; null where there is none. */
  readonly number: string | null
  readonly year: number | null
  /** What was read, what it says, and what is uncertain in it. */
  readonly note: string
}

/** Where a formula, limit or constant comes from. `number` and `year` are null where there is none or it is not known. */
export type Source = Citation &
  (
    | { readonly kind: 'quoted'; readonly quotedBy: string }
    | { readonly kind: Exclude<SourceKind, 'quoted'>; readonly quotedBy?: never }
  )
