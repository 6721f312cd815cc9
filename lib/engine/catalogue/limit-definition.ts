import type { Unit } from '../results'
import type { SourceKey } from '../sources'

/** A limit that a workspace or a fabricator may set for themselves. */
export interface LimitDefinition {
  readonly label: string
  readonly unit: Unit
  readonly sense: 'at-most' | 'at-least'
  /** Used until somebody sets another. */
  readonly value: number
  /** What an override may be. */
  readonly allowed: { readonly min: number; readonly max: number }
  readonly sourceKey: SourceKey
  /** Spread between guides, or why this figure was chosen. */
  readonly note: string
}
