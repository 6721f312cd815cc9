import type { Operation } from 'rfc6902'
import type { Severity } from '../../catalogue'
import type { ItemBasis, Verdict } from '../../results'

/** One change of the way out. */
export interface WayOutChange {
  readonly id: string
  /** In the trade's words: `Pads-only plating`. */
  readonly title: string
  /** What is edited, from and to. */
  readonly detail: string
  /** Items that it was made for. */
  readonly itemIds: readonly string[]
  /** A need that is no longer kept as it was stated, with from and to; null where none is given up. Somebody has to agree to it. */
  readonly relaxes: string | null
  /** What the numbers do not say. */
  readonly cautions: readonly string[]
}

/** An item whose verdict the changes move. */
export interface MovedByWayOut {
  readonly itemId: string
  readonly question: string
  readonly severity: Severity
  readonly before: Verdict | 'needs-judgment'
  readonly after: Verdict | 'needs-judgment'
  readonly headline: string
}

/** An item that fails, and that no change here clears. */
export interface LeftItem {
  readonly itemId: string
  readonly question: string
  readonly severity: Severity
  readonly basis: ItemBasis
  readonly headline: string
}

export interface WayOut {
  readonly engineVersion: string
  readonly changes: readonly WayOutChange[]
  /** RFC 6902 (JSON Patch) on the design document, and the patch that takes it back. */
  readonly patch: readonly Operation[]
  readonly undoPatch: readonly Operation[]
  /** Items that fail by calculation or by a typed number, before and after. */
  readonly failing: { readonly before: number; readonly after: number }
  /** Every effect on the checklist. */
  readonly moved: readonly MovedByWayOut[]
  /** Calculated or typed, and still failing. */
  readonly left: readonly LeftItem[]
  /** Only people can settle them: what somebody stated, or what the review has to answer. */
  readonly forPeople: readonly LeftItem[]
  /** Fail by what was measured in the artwork of the design as it is: the files have to be drawn again. */
  readonly inArtwork: readonly LeftItem[]
  /** Designs that were tried. */
  readonly triedCount: number
  readonly isStopped: boolean
}

export interface WayOutProgress {
  readonly triedCount: number
  /** 0 to 1. */
  readonly doneFraction: number
}
