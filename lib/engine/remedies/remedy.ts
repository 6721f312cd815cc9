import type { Operation } from 'rfc6902'
import type { ItemVerdict } from '../catalogue/define-item'
import type { Severity } from '../catalogue/severity'
import type { Reading, Verdict } from '../results'

/** The families of changes that the trade tries on a bend, in the order in which they are applied together. */
export const REMEDY_FAMILIES = [
  'wider-zone',
  'one-layer-in-bend',
  'opposite-copper-removed',
  'unbonded-leaves',
  'plane-pattern',
  'rolled-annealed-foil',
  'pads-only-plating',
  'lighter-foil',
  'narrower-conductors',
  'adhesiveless-clad',
  'base-film',
  'coverlay-film',
  'coverlay-adhesive',
  'coverlay-left-off',
  'adhesive-kind',
  'sheet-tolerance',
  'radius-tolerance',
  'less-pull',
  'less-twist',
  'longer-twist',
  'cut-outs',
  'larger-radius',
  'longer-zone',
  'split-bend',
] as const
export type RemedyFamily = (typeof REMEDY_FAMILIES)[number]

/** What stands against a change, and who says so. */
export interface ForbiddenNeed {
  readonly kind:
    | 'current'
    | 'voltage-drop'
    | 'impedance'
    | 'connector-window'
    | 'operating-temperature'
    | 'material'
    | 'encapsulation'
    | 'room'
    | 'crossing-conductors'
    | 'zone-length'
    | 'damage-sum'
    | 'other-bend'
    | 'pull'
    | 'twist'
    /** An item of the checklist, by its question: not forbidden, and no set that makes it fail leads. */
    | 'other-item'
  /** The feature, zone, layer or material that has the need. */
  readonly name: string
  /** A sentence with the numbers. */
  readonly because: string
}

/** One change of the design, alone or with others. */
export interface RemedyChange {
  /** Stable: a family and what it is applied to, `lighter-foil:12`. */
  readonly id: string
  readonly family: RemedyFamily
  /** In the trade's words: `Pads-only plating`. */
  readonly title: string
  /** What is edited, from and to, by layer, zone or bend. */
  readonly detail: string
  /** What the numbers do not say: things to look at before it is done. */
  readonly cautions: readonly string[]
}

/** What a bend and the zones come to, before or after a remedy. */
export interface RemedyState {
  /** Worst of strain and life. */
  readonly verdict: Verdict
  readonly strainVerdict: Verdict
  readonly lifeVerdict: Verdict
  /** What that verdict rests on, in a sentence with its numbers. */
  readonly because: string
  readonly insideRadiusMm: number
  readonly peakStrainPct: number | null
  readonly peakRangePct: { readonly low: number; readonly high: number } | null
  readonly allowablePct: number | null
  /**
   * 1 less greatest strain over least allowable, each at its worst corner of tolerances and constants, of the copper that has least to spare;
   * negative where it does not hold there.
   */
  readonly marginFraction: number | null
  /** Radius at which the strain just holds at nominal. */
  readonly minRadiusMm: number | null
  /** Null unless the use is dynamic. */
  readonly survivalLifeCycles: number | null
  /** The same as it is shown. */
  readonly survivalLife: Reading | null
  /**
   * Conductor layers of a dynamic bend whose foil is not rolled-annealed: the relation makes them look better in long life than tests
   * bear out, so that fewer of them is better whatever it says.
   */
  readonly unprovenFoilLayers: number
  readonly momentNmm: number | null
  /** Loads that are left: taking one away asks something of the assembly. 0 where none is stated. */
  readonly pullN: number
  readonly twistDeg: number
  readonly twistLengthMm: number
  readonly bendZoneThicknessUm: number
  readonly zones: readonly { readonly zoneId: string; readonly name: string; readonly thicknessUm: number }[]
  /** Lengths and widths of all zones together, as far as they are stated: what a longer or wider zone makes larger. */
  readonly planSizeMm: number
  /** Verdict of each other bend of the part. */
  readonly otherBends: readonly {
    readonly bendId: string
    readonly name: string
    readonly verdict: Verdict
    readonly because: string
  }[]
  /** Relative cost, where the caller gave a way to find it. */
  readonly costIndex: number | null
}

/** A material as it is bought, and how soon it is to be had. */
export interface NeededMaterial {
  /** In words, with its thickness: `Polyimide coverlay, 12.5 um, with 15 um acrylic adhesive`. */
  readonly name: string
  /** `unknown`: nothing says whether it can be had. */
  readonly state: 'on-shelf' | 'to-order' | 'unknown'
  /** To be ordered only. */
  readonly leadTimeDays: number | null
}

/** An item of the checklist that a remedy moves, the bend's own among them. */
export interface MovedItem {
  readonly itemId: string
  readonly question: string
  readonly severity: Severity
  /** `fails`: it fails where it did not before. */
  readonly effect: 'fails' | 'worse' | 'better'
  readonly before: ItemVerdict
  readonly after: ItemVerdict
  /** What it comes to, in a sentence with its numbers. */
  readonly because: string
}

/**
 * How far a remedy of a drawn part was looked at: by the drawn dimensions alone, on the plan with its edits, or with the folded part. The whole is looked at for what
 * would lead; without a plan there is no more to look at.
 */
export type Judged = 'on-numbers' | 'on-plan' | 'folded'

export interface Remedy {
  /** Ids of its changes joined by `+`, in the order of application. */
  readonly id: string
  readonly changes: readonly RemedyChange[]
  /** RFC 6902 (JSON Patch) on the design document, and the patch that takes it back. */
  readonly patch: readonly Operation[]
  readonly undoPatch: readonly Operation[]
  readonly after: RemedyState
  /** Empty where nothing stands against it. */
  readonly forbiddenBy: readonly ForbiddenNeed[]
  /** Other bends whose verdict gets worse. */
  readonly worsens: readonly {
    readonly bendId: string
    readonly name: string
    readonly before: Verdict
    readonly after: Verdict
  }[]
  /** What it does to the checklist; a remedy that makes a blocking or major item fail leads no list. */
  readonly movedItems: readonly MovedItem[]
  readonly judged: Judged
  /** Parts on a panel as it is and with the remedy; null where the caller gave no way to find them. */
  readonly partsPerPanel: { readonly before: number; readonly after: number } | null
  /** Materials that the design does without, and that are not on the shelf. */
  readonly offShelf: readonly NeededMaterial[]
}

/** How often each need stands against a set of changes with which the bend would meet. */
export interface HeldBack {
  readonly need: ForbiddenNeed
  readonly setCount: number
}

/** Whether allowed changes bring the bend to where it meets, and what stops them where they do not. */
export type RemedyArrival =
  | { readonly kind: 'meets-as-it-is' }
  /** `remedyId` is the smallest allowed set that meets; no smaller one does where `search.completeUpTo` reaches its size. */
  | {
      readonly kind: 'meets'
      readonly remedyId: string
      readonly changeCount: number
      readonly makesPartLarger: boolean
      /** The smallest one that leaves the part as long and wide as it is, where `remedyId` does not; null where none was found. */
      readonly sameSizeRemedyId: string | null
    }
  | {
      readonly kind: 'falls-short'
      /** Nearest allowed set; null where leaving the design as it is is no further off. */
      readonly remedyId: string | null
      /** Negative: by which share the strain exceeds its allowable at the worst corner. Null where no strain is allowed. */
      readonly marginFraction: number | null
      /** What the nearest one still fails on, in a sentence. */
      readonly because: string
      /** Needs that forbid sets which would meet, most frequent first. */
      readonly heldBack: readonly HeldBack[]
    }

/** How much was looked at. */
export interface RemedySearch {
  /** Sets of up to this many changes were all tried. */
  readonly completeUpTo: number
  /** Largest number of changes in a set that was tried. */
  readonly deepest: number
  readonly isStopped: boolean
}

export interface RemedyReport {
  readonly engineVersion: string
  readonly bendId: string
  readonly bendName: string
  readonly before: RemedyState
  readonly arrival: RemedyArrival
  /** Best first: allowed before forbidden, by verdict, fewest changes, margin. */
  readonly remedies: readonly Remedy[]
  readonly tried: { readonly alone: number; readonly inPairs: number; readonly inLargerSets: number }
  readonly search: RemedySearch
  /** How many do not bring the bend nearer, are beaten on every count by another or by leaving the design as it is, or come after the best of those that do not meet. */
  readonly leftOut: number
  /** Why nothing was tried, in words; null where something was. */
  readonly notTried: string | null
}
