import type { Outcome, Verdict } from './outcome'

/**
 * How an item's verdict was reached, told apart in every count and list: `computed` from construction, bends and brief by a calculation; `typed`, a
 * number or term that somebody typed was compared; `stated`, somebody looked and says so; `judgment`, a person weighs it.
 */
export type ItemBasis = 'computed' | 'typed' | 'stated' | 'judgment'

/**
 * What the catalogue's item comes to for a design that nobody records: a draft at each keystroke, a change that is tried. Which failures follow from another
 * is not sought, so that they cannot be counted as failures of their own.
 */
export interface DraftItemResult {
  readonly itemId: string
  /**
   * The weakest of what its verdict rests on; all may be inapplicable.
   */
  readonly basis: ItemBasis
  readonly verdict: Verdict | 'needs-judgment'
  readonly outcomes: readonly Outcome[]
  /** The title of the item for this verdict, and the sentence that matters most. */
  readonly headline: string
  /** `not-sought` where it fails or is thin, and may follow from another item. */
  readonly followsFrom?: readonly string[] | 'not-sought'
}

/** What the catalogue's item comes to for this design. */
export interface ItemResult extends DraftItemResult {
  /**
   * Items whose failure brings this one, at every place where it fails or is thin; absent where it stands by itself, and in results of engines
   * before 4. One of these fails by itself and follows from nothing.
   */
  readonly followsFrom?: readonly string[]
}
