import type { ConductorStrainResult } from './copper-strain'
import type { LimitOwner, MissingInput, QuantityRange } from './outcome'

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
