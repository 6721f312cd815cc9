import type { DecidedWhen } from '../define-item'
import type { OnlyWhere } from '../field-places'
import type { LimitKey } from '../limits'
import type { Severity } from '../severity'

/** What a profile says of one item. Null leaves it as the catalogue has it. */
export interface ProfileItem {
  readonly itemId: string
  readonly asked: 'on' | 'off' | null
  readonly severity: Severity | null
  readonly decidedWhen: DecidedWhen | null
  /** Asked of every design, also of one without what the item is about: then a person says why it does not matter. */
  readonly isForEveryDesign: boolean
  readonly reason: string
}

export interface ProfileLimit {
  readonly key: LimitKey | (string & {})
  readonly value: number
  /**
   * Laxer than the delivered limit on purpose. Without it the delivered limit holds where that is harder to meet, so that a limit which is
   * tightened later is not loosened by a profile from before.
   */
  readonly isRelaxed: boolean
  /** Key of SOURCES. */
  readonly sourceKey: string
  readonly note: string
}

/** A field of the design that has to be filled in. */
export interface RequiredField {
  /** `*` stands for the entries of a list: `bends.*.requiredCycles`. */
  readonly field: string
  /** Null where it is required of every entry. */
  readonly where: OnlyWhere | null
  readonly reason: string
}

/** A named layer over the workspace's catalogue, for one kind of part. */
export interface Profile {
  /** Ids of a workspace's own profiles begin with `own-`. */
  readonly id: string
  readonly name: string
  /** Which parts it is for. */
  readonly purpose: string
  readonly items: readonly ProfileItem[]
  readonly limits: readonly ProfileLimit[]
  readonly requiredFields: readonly RequiredField[]
  /** So many different people must sign; absent where the policy of the project alone says. */
  readonly requiredSignatures?: number | null | undefined
  /** The share that must survive, in per cent, is at least this; absent where it asks for none. */
  readonly leastSurvivalPct?: number | null | undefined
}
