import type { LimitOwner, MissingInput, Outcome, Quantity, QuantityRange, Verdict } from './outcome'

/** Thickness of one layer in one zone, finished. */
export interface ZoneLayerResult {
  readonly layerId: string
  readonly name: string
  readonly kind: string
  readonly materialId: string | null
  /** Depth of the layer's upper face below the zone's top face. */
  readonly topDepthUm: number
  readonly nominalUm: number
  readonly minUm: number
  readonly maxUm: number
  /** As entered: foil or sheet as bought. An adhesive that flowed is thinner in the finished zone. */
  readonly asBoughtUm: number
  /** Foil as bought, plating added here, processing loss; conductors only. */
  readonly copper: { readonly foilUm: number; readonly platingUm: number; readonly lossUm: number } | null
  readonly coverageFraction: number | null
  /** Share of the zone's thickness variance that this layer brings. */
  readonly varianceShareFraction: number
}

/** A connector end over its contacts: the zone with what lies on pads alone, plating and finish. */
export interface ContactResult {
  readonly thicknessUm: number
  readonly worstCaseUm: QuantityRange
  readonly platingUm: number
  readonly finishUm: number
  /** What nobody said: whether the contacts are plated, how thick their finish is. Counted as nothing above. */
  readonly missing: readonly MissingInput[]
}

/** How a zone that lies free curls, being flat at one temperature and at another one in service. */
export interface ThermalCurlResult {
  /** What is not known; nothing is computed then. */
  readonly missing: readonly MissingInput[]
  /** At the service temperature farthest from the flat one. */
  readonly atDegC: number | null
  /** Of the leaf that curls most; positive where the bottom face comes to the convex side. */
  readonly curvaturePerMm: number | null
  readonly curvatureRangePerMm: QuantityRange | null
  /** Rise of the arc over the zone's longer side, in per cent of it. */
  readonly risePct: number | null
  /** Over tolerances and the spread of every constant. */
  readonly riseRangePct: QuantityRange | null
}

export interface ZoneResult {
  readonly zoneId: string
  readonly name: string
  readonly kind: string
  readonly layers: readonly ZoneLayerResult[]
  readonly thicknessUm: number
  readonly worstCaseUm: QuantityRange
  readonly rootSumSquareUm: QuantityRange
  /** Connector ends only: thickness where the contacts are, which the connector takes. */
  readonly contact: ContactResult | null
  readonly encapsulation: readonly Outcome[]
  /** Curl of the flat part over its temperatures; an earlier engine did not report it. */
  readonly thermalCurl: ThermalCurlResult | null
  /** What a defined default was used for, in words. */
  readonly defaultsUsed: readonly string[]
}

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

/** The film at a face of a leaf; strains are magnitudes, as peakStrainPct of conductors. */
export interface FaceFilmResult {
  readonly side: 'inner' | 'outer'
  readonly layerId: string
  readonly name: string
  readonly strainPct: number
  readonly strainRangePct: QuantityRange
  readonly yieldStrainPct: number
  /** Over the spread of the film's own constants. */
  readonly yieldRangePct: QuantityRange
  /** In a fold that was made before; null where there was none. */
  readonly fold: { readonly strainPct: number; readonly rangePct: QuantityRange } | null
}

/** Where no model reaches a bend, so that its figures are guides and no verdict may rest on them. */
export interface ModelLimit {
  /** `leaves` says that a leaf may be pulled by being too short: as with `loads`, what fails without it fails. */
  readonly kind: 'tight-radius' | 'hatch' | 'states' | 'loads' | 'leaves'
  /** Clauses, as those of a "cannot tell". */
  readonly because: string
  readonly decidedBy: string
}

/** Copper and face films of leaves that are no tighter than the models reach. */
export interface KnownAtLeast {
  readonly conductors: readonly ConductorStrainResult[]
  readonly faceFilms: readonly FaceFilmResult[]
}

/** One bonded leaf of a bend: the whole section, or what lies between unbonded gaps. Depths from the bend's inside face. */
export interface LeafResult {
  readonly leafIndex: number
  readonly innerDepthUm: number
  readonly thicknessUm: number
  /** While nothing yields. */
  readonly neutralAxisDepthUm: number
  /** Depth without strain when first bent to the radius; copper past yield moves it. */
  readonly formedAxisDepthUm: number
  /** Depth that the strain which decides is measured from: of the range of a cycle where flexed one way, else as formed. */
  readonly decidingAxisDepthUm: number
  /** Inside radius over thickness. */
  readonly radiusRatio: number
  /** How far the strain may be off by its formula, in per cent of it; null where no figure is known to be right. */
  readonly accuracyPct: number | null
  /** The same for its moment. */
  readonly momentAccuracyPct: number | null
  /** What the accuracy leaves out of account, in a sentence; null where nothing. */
  readonly accuracyNote: string | null
  /** Films and adhesives at its faces that have a yield; empty where an earlier engine did not report them. */
  readonly faceFilms: readonly FaceFilmResult[]
  readonly insideRadiusMm: number
  readonly rigidityNmm2PerMm: number
  readonly developedLengthMm: number
}

/** Points for the strain-through-thickness plot; depth from the inside face. */
export interface StrainProfilePoint {
  readonly depthUm: number
  readonly strainPct: number
  readonly layerId: string
  readonly leafIndex: number
}

export interface LifeCurvePoint {
  readonly insideRadiusMm: number
  readonly medianLifeCycles: number
  readonly survivalLifeCycles: number
}

/** One constant of one layer at its worse end, all others at nominal. */
export interface HangsOn {
  readonly layerId: string
  readonly quantity: string
  readonly low: number
  readonly high: number
  /** Strain of the copper over its allowable, at nominal and with this constant at its worse end. */
  readonly nominalShare: number
  readonly worstShare: number
  readonly sentence: string
}

/** A set of own flex tests as the life of one conductor rests on it. */
export interface OwnTestsUse {
  readonly layerId: string
  readonly layerName: string
  readonly leafIndex: number
  /** The workspace or the fabricator whose tests they are. */
  readonly owner: LimitOwner
  readonly set: string
  readonly kind: 'circuit' | 'bare-foil'
  readonly specimens: number
  readonly failures: number
  /** As fitted, with 90 % bounds; null where the slope is not taken from this set. */
  readonly slope: { readonly value: number; readonly low: number | null; readonly high: number | null } | null
  /** The end of the bounds that the life was computed with. */
  readonly usedSlope: number | null
  /** As fitted, with 90 % bounds, which the range of the life goes over; null where ductility is not taken from this set. */
  readonly fatigueDuctility: { readonly value: number; readonly low: number; readonly high: number } | null
  /** Share of the fatigue relation's lives that the tests reached, where they fell short of it; null where they did not. */
  readonly lifeFraction: number | null
  /** What was tested: inside radius over thickness, strain range of a cycle, cycles. */
  readonly radiusRatio: QuantityRange | null
  readonly strainRangePct: QuantityRange | null
  readonly cycles: QuantityRange
  readonly temperatureDegC: number | null
  readonly reports: readonly string[]
}

/** What a bend states beside one radius that it takes from flat, with what follows for the whole of it. */
export interface BendStates {
  /** Inside radius at the flatter end; null where it is flat. */
  readonly fromRadiusMm: number | null
  /** Inside radius that would give the same strain range from flat; null where it flexes from flat. */
  readonly equivalentRadiusMm: number | null
  readonly foldedToRadiusMm: number | null
  readonly pullN: number
  readonly twistDeg: number
  readonly twistLengthMm: number | null
  /** Torque of the twist over the whole width, elastic; null where none is computed. */
  readonly twistTorqueNmm: number | null
}

/** A fold of 180 degrees between two parallel faces with nothing inside it. */
export interface FreeFold {
  readonly faceGapMm: number
  /** At its tip, its tightest place; copper past yield leaves it within 2 %. */
  readonly tipInsideRadiusMm: number
  /** With which it pushes the faces apart. */
  readonly forceN: number
}

/** A leaf that is held at both ends and too short for its way, as far as the lengths of the leaves are stated. */
export interface LeafPull {
  readonly leafIndex: number
  /** Between the places where it is held: the length of its zone. */
  readonly heldLengthMm: number
  /** What it lacks against the leaf at the other face. */
  readonly shortMm: number
  readonly shortRangeMm: QuantityRange
  /** Stretch in the bend where its neighbours shorten as much as they are stiff; null where it is more than can be told. */
  readonly strainPct: number | null
  /** The same in its straight part. */
  readonly straightPct: number | null
  /** Where nothing but the leaf gives, over tolerances and constants; null where it is more than can be told. */
  readonly highPct: number | null
  readonly forceN: number | null
  /** The most that can be told. */
  readonly beyondPct: number
}

export interface BendResult {
  readonly bendId: string
  readonly name: string
  readonly zoneId: string
  readonly use: string | null
  readonly sectionThicknessUm: number
  readonly leaves: readonly LeafResult[]
  readonly conductors: readonly ConductorStrainResult[]
  readonly strainProfile: readonly StrainProfilePoint[]
  /** Copper strain of the layer that decides; with one foil throughout that is the largest of the bend. */
  readonly peakStrainPct: number | null
  readonly peakRangePct: QuantityRange | null
  readonly allowablePct: number | null
  readonly allowableRangePct: QuantityRange | null
  /** The conductor layer with the largest strain for its allowable, which peak, allowable and their ranges belong to. */
  readonly governingLayerId: string | null
  /** Of that layer: strain when first bent, range of a cycle, and bound of the strain over the cycles. */
  readonly firstBendStrainPct: number | null
  readonly cycleRangePct: number | null
  readonly greatestStrainPct: number | null
  /** Empty where the models reach the bend. */
  readonly modelLimits: readonly ModelLimit[]
  /**
   * Where the radius is too tight for a strain to be told: copper and face films opened to the least radius at which it can be. They
   * strain at least that much, so that what fails there fails for certain. Null elsewhere, and where the stiffness is not known either.
   */
  readonly knownAtLeast: KnownAtLeast | null
  /** Radius at which the strain just holds at nominal; over tolerances and constants it takes more. */
  readonly minRadiusByStrainMm: number | null
  /** That radius is the least at which a strain can be told at all: at a smaller one nobody knows. */
  readonly isMinRadiusFloor: boolean
  /** Radius at which the required life is just reached at the survival percentile, at nominal. */
  readonly minRadiusByLifeMm: number | null
  readonly handbook: {
    readonly minRadiusMm: number | null
    /** Over the tolerances of the section. */
    readonly minRadiusRangeMm: QuantityRange | null
    readonly clamped: boolean
    /** Allowable deformation of copper that the formula was used with, E_B. */
    readonly deformationPct: number | null
    readonly formula: string
    readonly warning: string | null
    readonly sourceKey: string
  }
  readonly ratio: {
    readonly actual: number
    readonly required: number | null
    readonly minRadiusMm: number | null
    readonly tableKey: string
    readonly tableName: string
    readonly surfaceStrainPct: number
    readonly sourceKey: string
    /** The table advises against this construction in this use. */
    readonly advisedAgainst: boolean
  }
  /** The constant that the verdict on strain and life hangs on most; null where nothing is allowed or nothing has a spread. */
  readonly hangsOn: HangsOn | null
  /** Why handbook, ratio and laminate results differ, in sentences; empty where they agree. */
  readonly disagreement: readonly string[]
  readonly lifeCurve: readonly LifeCurvePoint[]
  readonly requiredCycles: number | null
  readonly medianLifeCycles: number | null
  readonly survivalLifeCycles: number | null
  /** Life at the survival percentile over tolerances and constants. */
  readonly survivalLifeRangeCycles: QuantityRange | null
  /** The least life lies past the end of the relation: it is longer than the figure. */
  readonly isLifeAtCap: boolean
  readonly survivalPct: number
  /** Own flex tests that stand in place of defaults, by conductor; empty where none covers the bend. */
  readonly ownTests: readonly OwnTestsUse[]
  /** Bending moment over the whole width, with copper past yield where it is. */
  readonly momentNmm: number | null
  /** Force at the edge of the nearest rigid zone that holds the bend; null where that distance is not known or 0. */
  readonly holdingForceN: number | null
  /** What is left when the bend is let go: radius null where it springs back flat, and the share of the angle it keeps. */
  readonly springback: {
    readonly relaxedRadiusMm: number | null
    readonly relaxedAngleDeg: number
    readonly keptFraction: number
  } | null
  /** Null where the bend is made from flat and nothing else loads it. */
  readonly states: BendStates | null
  /** Where two faces hold the bend, and the gap between them is known and can hold it. */
  readonly freeFold: FreeFold | null
  /** Null where there is one leaf, or lengths of leaves or zone are not stated, or the leaves have room to buckle. */
  readonly leafPull: LeafPull | null
  readonly developedLengthMm: number
  /** Greatest difference in developed length between leaves. */
  readonly leafLengthDifferenceMm: number
  readonly leafLengthRangeMm: QuantityRange
  /** Share of the rigidity that shield films bring, 0 to 1, with its range over tolerances and constants; null without a shield. */
  readonly shieldShare: { readonly nominal: number; readonly range: QuantityRange } | null
  readonly missing: readonly MissingInput[]
  readonly cautions: readonly string[]
}

export interface ConductorResult {
  readonly conductorId: string
  readonly name: string
  readonly layerId: string
  readonly finishedThicknessUm: number
  readonly temperatureDegC: number | null
  readonly resistanceOhm: number | null
  readonly dropVolt: number | null
  /** Where the conductor is hotter than resistance is computed for: what it drops at the hottest that is, and so at least. */
  readonly dropAtLeastVolt: number | null
  readonly capacityAmp: number | null
  readonly riseDegC: number | null
  /** Over the tolerance of the finished copper and the spread of its resistivity. */
  readonly capacityRangeAmp: QuantityRange | null
  readonly riseRangeDegC: QuantityRange | null
  readonly resistanceRangeOhm: QuantityRange | null
  readonly dropRangeVolt: QuantityRange | null
  readonly lightestFoilUm: number | null
  readonly missing: readonly MissingInput[]
  /** Why no figure can be given though nothing is missing: a clause; null where the figures stand. */
  readonly cannotTell: string | null
  readonly cautions: readonly string[]
}

/**
 * How an item's verdict was reached, told apart in every count and list: `computed` from construction, bends and brief by a calculation; `typed`, a
 * number or term that somebody typed was compared; `stated`, somebody looked and says so; `judgment`, a person weighs it.
 */
export type ItemBasis = 'computed' | 'typed' | 'stated' | 'judgment'

/**
 * What the catalogue's item comes to for a design that nobody records: a draft at each keystroke, a change that is tried. Which failures follow from another
 * is not sought, so that they cannot be counted as failures of their own.
 */
export interface DraftItemResult {
  readonly itemId: string
  /**
   * The weakest of what its verdict rests on; all may be inapplicable.
   */
  readonly basis: ItemBasis
  readonly verdict: Verdict | 'needs-judgment'
  readonly outcomes: readonly Outcome[]
  /** The title of the item for this verdict, and the sentence that matters most. */
  readonly headline: string
  /** `not-sought` where it fails or is thin, and may follow from another item. */
  readonly followsFrom?: readonly string[] | 'not-sought'
}

/** What the catalogue's item comes to for this design. */
export interface ItemResult extends DraftItemResult {
  /**
   * Items whose failure brings this one, at every place where it fails or is thin; absent where it stands by itself, and in results of engines
   * before 4. One of these fails by itself and follows from nothing.
   */
  readonly followsFrom?: readonly string[]
}

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
