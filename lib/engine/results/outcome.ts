import { citeRecordedSource, SOURCE_KINDS } from '../sources'
import type { Unit } from '../units'

export type { Unit }

/** What a value stands for that ends where its relation ends. */
export type Bound = 'longer-than' | 'shorter-than' | 'less-than' | 'more-than'

const BOUND_WORDS: Readonly<Record<Bound, string>> = {
  'longer-than': 'longer than ',
  'shorter-than': 'shorter than ',
  'less-than': 'less than ',
  'more-than': 'more than ',
}

/** What stands before the number, with its space: the one wording of every exit. */
export function getBoundPrefix(bound: Bound | undefined): string {
  return bound === undefined ? '' : BOUND_WORDS[bound]
}

export interface Quantity {
  readonly value: number
  readonly unit: Unit
  /** Absent where the value is what it stands for. */
  readonly bound?: Bound
}

/** Best and worst value over the tolerance range, in the unit of the nominal one. */
export interface QuantityRange {
  readonly low: number
  readonly high: number
}

/**
 * Who set a limit, and the word that is shown for it. Limits that come with the catalogue carry the kind of their
 * source; design, workspace, profile and fabricator override them.
 */
export const LIMIT_OWNER_KINDS = {
  ...SOURCE_KINDS,
  design: 'this design',
  workspace: 'workspace',
  profile: 'profile',
  fabricator: 'fabricator',
} as const

export type LimitOwnerKind = keyof typeof LIMIT_OWNER_KINDS

export interface LimitOwner {
  readonly kind: LimitOwnerKind
  /** Name to show: `IPC-2223, as quoted by fabricator guides`, `common practice`, the workspace's or fabricator's name. */
  readonly name: string
}

/**
 * Whose limit it is, in words that always say how far it is known: the one way in which screens, reports and the
 * command name it.
 *
 * @example describeLimitOwner({ kind: 'published', name: 'IPC-TM-650 2.4.3' }) gives 'IPC-TM-650 2.4.3 (published)'
 */
export function describeLimitOwner({ kind, name }: LimitOwner): string {
  const word = LIMIT_OWNER_KINDS[kind]
  return name.toLowerCase().includes(word) ? name : `${name} (${word})`
}

export interface Limit {
  /** Stable key in the dictionary of limits. */
  readonly key: string
  readonly value: number
  /** Upper end where `sense` is `within`. */
  readonly upperValue?: number
  readonly unit: Unit
  readonly sense: 'at-most' | 'at-least' | 'within' | 'equals'
  readonly owner: LimitOwner
  /** Key of SOURCES. */
  readonly sourceKey: string
}

/** How a value has to stand to a limit. */
export const LIMIT_SENSE_WORDS: Readonly<Record<Limit['sense'], string>> = {
  'at-most': 'at most',
  'at-least': 'at least',
  within: 'within',
  equals: 'exactly',
}

/** Whose limit it is, and where it comes from. One that comes with the catalogue is its source's, which says how far it is known. */
export function describeLimitOrigin({ owner, sourceKey }: Limit): string {
  const source = citeRecordedSource(sourceKey)
  return owner.kind in SOURCE_KINDS ? source : `${describeLimitOwner(owner)}; ${source}`
}

/** Something in the design that a result is about. */
export interface Place {
  readonly kind:
    | 'layer'
    | 'zone'
    | 'bend'
    | 'conductor'
    | 'hole'
    | 'pad'
    | 'corner'
    | 'width-step'
    | 'coverlay-opening'
    | 'stiffener'
    | 'slit'
    | 'component'
    | 'connector'
    | 'registration'
    | 'brief'
    | 'routing'
    | 'design'
  readonly id: string
  readonly name: string
}

export interface MissingInput {
  readonly path: readonly (string | number)[]
  /** In words: `required cycles of bend Hinge`. */
  readonly label: string
}

/**
 * Verdicts: `meets` holds over tolerances and the spread of constants, `thin-margin` at nominal only, `fails` not even at nominal,
 * `not-computed` lacks an input that is named, `cannot-tell` lies where the model does not reach, `not-applicable` has nothing to
 * judge.
 */
export type Verdict = 'meets' | 'thin-margin' | 'fails' | 'cannot-tell' | 'not-computed' | 'not-applicable'

/** Where artwork shows something, in mm: in the coordinates of the plan that the artwork was laid over, or in those of its own files. */
export interface ArtworkSpot {
  readonly frame: 'plan' | 'files'
  readonly xMm: number
  readonly yMm: number
}

interface OutcomeCommon {
  readonly places: readonly Place[]
  /** Absent where the outcome rests on no artwork, and in results of engines before 6. */
  readonly artworkAt?: ArtworkSpot
  /** One sentence that says what was found, numbers included. */
  readonly summary: string
}

/** The end of a window that decides: the one that is missed, or that the range comes nearest to. */
export interface DecidingEnd {
  readonly end: 'lower' | 'upper'
  /** Value of that end, in the limit's unit. */
  readonly limit: number
  /** What is held against it: the nominal value where that misses already, else the end of the range. */
  readonly value: number
  /** Distance between the two; negative means violated. */
  readonly margin: number
}

/** What a range was taken over, as it is written behind it. */
export const RANGE_OVER = {
  tolerances: 'over tolerances',
  constants: 'over material constants',
  both: 'over tolerances and material constants',
} as const
export type RangeOver = keyof typeof RANGE_OVER

export interface DecidedOutcome extends OutcomeCommon {
  readonly kind: 'decided'
  readonly verdict: 'meets' | 'thin-margin' | 'fails'
  readonly value: Quantity
  readonly range?: QuantityRange
  readonly limit: Limit
  /** Where the limit is computed too, from toleranced layers or from constants. */
  readonly limitRange?: QuantityRange
  /** Distance to the limit in the limit's unit; negative means violated. */
  readonly margin: number
  /** Where the limit is a window (`within`). */
  readonly decidingEnd?: DecidingEnd
  /** Name of the equation or comparison that decided. */
  readonly equation: string
  readonly sourceKey: string
  /** Cautions that belong to this number (outside the relation's range, default used ...). */
  readonly cautions: readonly string[]
  /** Somebody's word: nothing was calculated. Recorded by engines before 3, and where a choice is stated. */
  readonly isStated?: true
  /** A number that somebody typed was compared with the limit. Absent where the figure was calculated. */
  readonly isTyped?: true
}

/**
 * What is written down in the design in words: no figure, no limit, no margin. `typed` is a term or choice of the design itself, which decides;
 * `stated` is somebody's observation, which a named person has yet to confirm where it says what is wanted.
 */
export interface SaidOutcome extends OutcomeCommon {
  readonly kind: 'said'
  readonly verdict: 'meets' | 'fails'
  readonly rests: 'typed' | 'stated'
  readonly sourceKey: string
}

/** No model of the program reaches this case: a figure would be a guess, and a verdict on it untrue. */
export interface CannotTellOutcome extends OutcomeCommon {
  readonly kind: 'cannot-tell'
  /** Why the model does not reach, a clause: `the relation ranks foils by strength at this life`. */
  readonly because: string
  /** What decides it instead, a clause: `qualify by test`. */
  readonly decidedBy: string
  /** The figure that the model gives all the same, where it says anything. */
  readonly value?: Quantity
  readonly limit?: Limit
}

/** How far a value lies from a limit, where the limit itself is not to be read off it. */
export type MarginBand = 'well-inside' | 'near-limit' | 'outside'

/**
 * Decided against a limit that its owner does not show. It is made outside of the engine, from decided outcomes, and holds
 * nothing from which the limit could be read: no limit, no margin, no range.
 */
export interface WithheldOutcome extends OutcomeCommon {
  readonly kind: 'withheld'
  readonly verdict: DecidedOutcome['verdict']
  readonly band: MarginBand
  /** Null where the value too depends on the limit. */
  readonly value: Quantity | null
  readonly owner: LimitOwner
}

export interface NotComputedOutcome extends OutcomeCommon {
  readonly kind: 'not-computed'
  readonly missing: readonly MissingInput[]
  /** What the missing input would have been; absent where it goes into a calculation. */
  readonly rests?: 'typed' | 'stated'
}

export interface NotApplicableOutcome extends OutcomeCommon {
  readonly kind: 'not-applicable'
}

export type Outcome =
  | DecidedOutcome
  | SaidOutcome
  | WithheldOutcome
  | CannotTellOutcome
  | NotComputedOutcome
  | NotApplicableOutcome

export function getOutcomeVerdict(outcome: Outcome): Verdict {
  return 'verdict' in outcome ? outcome.verdict : outcome.kind
}

/** As a list marks it: a recorded yes that nobody has confirmed is not shown as met. */
export function getShownVerdict(outcome: Outcome): Verdict | 'needs-judgment' {
  return outcome.kind === 'said' && outcome.rests === 'stated' && outcome.verdict === 'meets'
    ? 'needs-judgment'
    : getOutcomeVerdict(outcome)
}

const VERDICT_ORDER: readonly Verdict[] = [
  'fails',
  'cannot-tell',
  'not-computed',
  'thin-margin',
  'meets',
  'not-applicable',
]

/** For sorting: what deserves attention first comes first. */
export function compareVerdicts(a: Verdict, b: Verdict): number {
  return VERDICT_ORDER.indexOf(a) - VERDICT_ORDER.indexOf(b)
}

/** The verdict that deserves attention first; of nothing, `not-applicable`. */
export function getWorstVerdict(verdicts: readonly Verdict[]): Verdict {
  for (const verdict of VERDICT_ORDER) if (verdicts.includes(verdict)) return verdict
  return 'not-applicable'
}
