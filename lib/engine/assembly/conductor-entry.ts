import type { ConductorStrain, ConductorStrainRange } from '../bending'
import type { ConductorStrainResult } from '../results'

export interface ConductorEntry {
  readonly result: ConductorStrainResult
  /** The copper of one material each, in the order in which it lies. */
  readonly parts: readonly PartEntry[]
}

export interface PartEntry {
  readonly bendLayerId: string
  readonly isPlating: boolean
  readonly result: ConductorStrainResult
  /** The allowable that a radius may be worked out from; null where nobody can tell one. */
  readonly provenPct: number | null
}

/** Copper of one material in its leaf, in each of the states. */
export interface PartStrains {
  /** Index in the leaf's layers. */
  readonly at: number
  readonly first: ConductorStrain
  readonly firstRange: ConductorStrainRange
  readonly deciding: ConductorStrain
  readonly decidingRange: ConductorStrainRange
  readonly fold: { readonly strain: ConductorStrain; readonly range: ConductorStrainRange } | null
}
