import type { BendResult, ModelLimit } from './bend'
import type { ConductorResult } from './conductor'
import type { DraftItemResult, ItemResult } from './item'
import type { Quantity, QuantityRange } from './outcome'
import type { ZoneResult } from './zone'

/** Several bends of one part act on the same conductors: shares of life used add up (Miner). */
export interface DamageResult {
  readonly conductorLayerId: string
  readonly damageSum: number
  /** Over the range of the lives. */
  readonly damageRange: QuantityRange
  /** By the lives that ductility alone carries, at the worst of the range; null where the foil is rolled-annealed. */
  readonly ductilityDamageSum: number | null
  /** What the bends bring whose life lies past the end of the relation: at most this. */
  readonly cappedDamageSum: number
  /** What is certain, where a bend lies out of the models' reach: that bend counts with no more than it is known to bring at least. */
  readonly leastDamageSum: number
  /** The first of those bends; null where the models reach all of them. */
  readonly beyondModel: { readonly bendId: string; readonly limit: ModelLimit } | null
  readonly contributions: readonly { readonly bendId: string; readonly damage: number }[]
}

/** A figure of the whole part. */
export interface Headline {
  readonly label: string
  /** Null where nobody can tell it. */
  readonly quantity: Quantity | null
  /** Why, a clause: which bend lies out of reach. Absent where the figure stands. */
  readonly because?: string
}

/** Of a design that nobody records. */
export interface DraftEvaluation {
  readonly engineVersion: string
  readonly designName: string
  readonly zones: readonly ZoneResult[]
  readonly bends: readonly BendResult[]
  readonly conductors: readonly ConductorResult[]
  readonly damage: readonly DamageResult[]
  readonly items: readonly DraftItemResult[]
  readonly headlineQuantities: readonly Headline[]
}

export interface Evaluation extends DraftEvaluation {
  readonly items: readonly ItemResult[]
}
