import type { ItemSection } from '../results'
import type { SourceKey } from '../sources'
import type { Severity } from './severity'

/** What an item needs that the program cannot read yet, as it follows "waits for". */
export const AWAITED_INPUTS = {} as const

/** A question that a review should ask and that is not asked yet: without its input an answer would be a guess. */
export interface AwaitedItem {
  /** Free until the item is there: it then keeps this id. */
  readonly id: string
  readonly section: ItemSection
  readonly severity: Severity
  readonly question: string
  readonly decidedBy: 'calculation' | 'measurement'
  readonly sourceKey: SourceKey
  readonly waitsFor: readonly (keyof typeof AWAITED_INPUTS)[]
  /** What a review does meanwhile, a sentence. */
  readonly meanwhile: string
}

/** Severities and order are our sorting: common practice, no published source, apart from the sources named. */
export const AWAITED_ITEMS: readonly AwaitedItem[] = []
