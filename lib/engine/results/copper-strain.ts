import type { QuantityRange } from './outcome'

/** Strain at both faces of one conductor layer in a bend; positive is tension. */
export interface ConductorStrainResult {
  readonly layerId: string
  readonly name: string
  readonly leafIndex: number
  readonly innerDepthUm: number
  readonly outerDepthUm: number
  readonly innerStrainPct: number
  readonly outerStrainPct: number
  /**
   * What the allowable stands against, and its range over tolerances and the spread of every constant: the larger magnitude of both faces in the first bend where folded or
   * flexed to install; the strain range of a cycle where flexed one way; half of it where reversed.
   */
  readonly peakStrainPct: number
  readonly peakRangePct: QuantityRange
  /** Larger magnitude of both faces when first bent. */
  readonly firstBendStrainPct: number
  /** Greatest less least strain of a cycle; null unless the use is dynamic. */
  readonly cycleRangePct: number | null
  /** Bound of the strain over the cycles, with the mean strain that stays; an earlier engine did not report it. */
  readonly greatestStrainPct: number | null
  /** Foil or plating, whichever has less to spare; an earlier engine did not tell them apart. */
  readonly governingMaterial: { readonly materialId: string; readonly name: string } | null
  /** Foil and what is plated on it, innermost first. */
  readonly parts: readonly CopperPartResult[]
  /** In dynamic use, for the required cycles at the survival percentile; else by foil and use. */
  readonly allowablePct: number | null
  /** Over the spread of the foil's constants. */
  readonly allowableRangePct: QuantityRange | null
  /** Dynamic use only: what the median part stands for the required cycles. */
  readonly medianAllowablePct: number | null
  /** Key of SOURCES for both allowables. */
  readonly allowableSourceKey: string | null
  readonly pastYield: boolean
  readonly yieldStrainPct: number
  /** Over the spread of the foil's constants. */
  readonly yieldRangePct: QuantityRange | null
  /** Distance of the middle from the neutral axis over the leaf's thickness, over tolerances and constants; dynamic use only. */
  readonly axisOffsetRangeFraction: QuantityRange | null
  /** Median and percentile life where the use is dynamic. */
  readonly medianLifeCycles: number | null
  readonly survivalLifeCycles: number | null
  /** Percentile life over the range of the strain and the spread of the foil's constants. */
  readonly survivalLifeRangeCycles: QuantityRange | null
  /** The median lies past the end of the relation: the life is longer than the figure. */
  readonly isLifeAtCap: boolean
  /** Dynamic use only: where the relation does not reach, so that "longer than the required cycles" is no verdict. */
  readonly lifeReach: LifeReach | null
  /** Percentile life that ductility alone carries at the worst of the range; foil that is not rolled-annealed, in dynamic use. */
  readonly ductilityLifeCycles: number | null
  /** Strain at the relation's end, where the required life lies beyond it: more than this fails, less nobody can tell. */
  readonly relationEndPct: number | null
  /** What its strain is made of, where a second state or a load is stated; null where it bends from flat and nothing else loads it. */
  readonly states: ConductorStates | null
}

/** Parts of a conductor's strain in a bend with a second state or a load. */
export interface ConductorStates {
  /** Of the strain that decides: bending between the two ends (half of it where reversed), pull, and the edge of a twist; these add up. */
  readonly bendingPct: number
  readonly pullPct: number
  readonly twistEdgePct: number
  /** Shear of the twist; a third of its square is added to the square of the sum. */
  readonly twistShearPct: number
  /** Middle of the bending strain of both ends, tension positive; not in the fatigue relation. Null where it is not known. */
  readonly meanPct: number | null
  /** Of firstBendStrainPct, over tolerances and constants. */
  readonly firstBendRangePct: QuantityRange
  readonly fold: FoldBeforeResult | null
}

/** A fold that was made once before, in one conductor layer. */
export interface FoldBeforeResult {
  readonly strainPct: number
  readonly strainRangePct: QuantityRange
  /** In one fold; null where the foil's record has none. */
  readonly allowablePct: number | null
  readonly allowableRangePct: QuantityRange | null
  readonly allowableSourceKey: string | null
  /** Share of the life at the survival percentile that it uses up; dynamic use only. */
  readonly damageFraction: { readonly nominal: number; readonly low: number; readonly high: number } | null
}

/**
 * How far the fatigue relation carries the comparison of a conductor's life with the required cycles.
 *
 * `within`             the relation stands for it
 * `strength-governed`  foil that is not rolled-annealed reaches the cycles by the term that follows tensile strength alone
 * `beyond`             the required cycles, at the survival asked for, lie past the end of the relation
 */
export type LifeReach = 'within' | 'strength-governed' | 'beyond'

/** Copper of one material in a conductor layer; strains as peakStrainPct of the layer. */
export interface CopperPartResult {
  readonly materialId: string
  readonly name: string
  readonly isPlating: boolean
  readonly thicknessUm: number
  readonly peakStrainPct: number
  readonly peakRangePct: QuantityRange
  /** When first bent; the cycle's range may be less. */
  readonly firstBendStrainPct: number
  /** Where a second state or a load sets it apart from peakRangePct; null elsewhere. */
  readonly firstBendRangePct: QuantityRange | null
  readonly allowablePct: number | null
  readonly allowableRangePct: QuantityRange | null
  readonly yieldStrainPct: number
  /** Over the spread of its own constants; an earlier engine did not report it. */
  readonly yieldRangePct: QuantityRange | null
  readonly medianLifeCycles: number | null
  readonly survivalLifeCycles: number | null
}
