import type { InputPattern } from '../item-inputs'

/** What stands beside a bend, a zone or another entry of a list. */
type Entry = Readonly<Record<string, unknown>>

/**
 * Between which figures the trade states a requirement, a rating that somebody vouches for, or a figure that no item of major severity judges. Wide on purpose: what lies outside is no
 * hard part, but most likely a slip of the decimal point, a wrong unit, or a figure that makes an item meet. Common practice and our choice,
 * no published source.
 */
export interface RequirementRange {
  /** Place in the design, `*` for the entries of a list. */
  readonly pattern: InputPattern
  /** In the unit of the field, both ends included. */
  readonly low: number
  readonly high: number
  /** How many steps at the end of the pattern name it: `pitch: minimum of the connector` takes two. */
  readonly nameSteps?: number
  /** Entries that it is for; all where left out. */
  readonly isFor?: (entry: Entry) => boolean
  /** Which entries those are, in words. */
  readonly forWhat?: string
  /** Nothing can be said of the part without it: while it is blank the item is open. Blank elsewhere says that nothing is required, or is asked by the items that need it. */
  readonly isAsked?: true
}
