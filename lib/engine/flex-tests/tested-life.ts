import type { BendMotion, BoundedEstimate } from '../life'
import type { LimitOwner, QuantityRange } from '../results'

/** A constant that tests gave, with both ends of its 90 % bounds. */
export interface TestedConstant {
  readonly value: number
  readonly low: number
  readonly high: number
}

/** What a set of flex tests says of a foil, and where it holds: all that an evaluation needs of it. */
export interface TestedLife {
  /** The workspace, or the fabricator. */
  readonly owner: LimitOwner
  readonly set: string
  readonly kind: 'circuit' | 'bare-foil'
  readonly foil: string
  readonly foilUm: number
  readonly motion: BendMotion
  readonly specimens: number
  readonly failures: number
  /** Scatter of circuits; null for bare foil, which has no etched conductors. */
  readonly slope: BoundedEstimate | null
  /** Null where the tests tell none. */
  readonly fatigueDuctility: TestedConstant | null
  /** Inside radius over thickness; of circuits. */
  readonly radiusRatio: QuantityRange | null
  /** Low 90 % bound of the median life at each R/t of circuits, from the tightest on; radii without such a bound are left out. */
  readonly medians: readonly { readonly radiusRatio: number; readonly lowCycles: number }[]
  /** Of the copper over one cycle; null where it was not stated. */
  readonly strainRangePct: QuantityRange | null
  /** From the first failure to the end of the longest test. */
  readonly cycles: QuantityRange
  readonly temperatureDegC: number | null
  /** Report numbers, each once. */
  readonly reports: readonly string[]
}
