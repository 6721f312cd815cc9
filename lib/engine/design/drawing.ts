import type { PlanMeasures } from '@/lib/plan'
import type { Place } from '../results'
import type { Design } from './design'

/** A dimension that the plan draws, and what was stated of it besides. */
export interface DrawnValue {
  readonly path: readonly (string | number)[]
  /** In words: `length of zone Hinge`. */
  readonly what: string
  readonly unit: 'mm' | 'deg' | null
  readonly stated: number | string | boolean | null
  readonly drawn: number | string | boolean | null
  readonly disagrees: boolean
  readonly places: readonly Place[]
}

/** What the plan tells of a design. */
export interface Drawing {
  /** The design with each drawn dimension in place of the stated one; the same object where nothing is drawn. */
  readonly design: Design
  /** As it was written. */
  readonly stated: Design
  readonly measures: PlanMeasures | null
  readonly values: readonly DrawnValue[]
}
