import type { RevisionTab } from '@/lib/addresses'

/** What does not agree, before anybody has said anything about it. */
export interface FoundDifference {
  readonly fact: string
  /** What it says, and where. */
  readonly said: string
  /** What stands against it. */
  readonly against: string
  readonly target: { readonly tab: RevisionTab; readonly id: string }
  /** Who said it; empty where it is the design that says it. */
  readonly saidById: string
}
