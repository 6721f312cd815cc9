import {
  type ArtworkSpot,
  type Bound,
  type CannotTellOutcome,
  type ConductorResult,
  type DecidedOutcome,
  type DecidingEnd,
  getBoundPrefix,
  type Limit,
  type MissingInput,
  type NotApplicableOutcome,
  type NotComputedOutcome,
  type Place,
  type Quantity,
  type QuantityRange,
  RANGE_OVER,
  type RangeOver,
} from '../results'
import type { SourceKey } from '../sources'
import { capitalise, inSentence } from '../units'
import { getSourceOwner } from './limits'

/** Rounding of sums in binary, relative: far below any tolerance of the trade, far above that of doubles. */
const EQUALITY_TOLERANCE_RELATIVE = 1e-9

/**
 * Distance of a value from its limit, in the limit's unit; negative means violated.
 * Values that differ from the limit by rounding alone count as on it.
 */
export function computeMargin(value: number, limit: Limit): number {
  const slack = EQUALITY_TOLERANCE_RELATIVE * Math.max(Math.abs(limit.value), Math.abs(limit.upperValue ?? 0), 1)
  const margin = computeRawMargin(value, limit)
  return Math.abs(margin) <= slack ? 0 : margin
}

function computeRawMargin(value: number, limit: Limit): number {
  switch (limit.sense) {
    case 'at-most':
      return limit.value - value
    case 'at-least':
      return value - limit.value
    case 'within':
      return Math.min(value - limit.value, (limit.upperValue ?? limit.value) - value)
    case 'equals':
      return -Math.abs(value - limit.value)
  }
}

/**
 * Which end of a window decides. A nominal value beyond one end misses that one; otherwise it is the end that the range
 * passes furthest, or comes nearest to.
 */
function findDecidingEnd(value: number, range: QuantityRange | undefined, limit: Limit): DecidingEnd | undefined {
  if (limit.sense !== 'within' || limit.upperValue === undefined) return undefined
  const upperValue = limit.upperValue
  const atLower = (found: number): DecidingEnd => ({
    end: 'lower',
    limit: limit.value,
    value: found,
    margin: computeMargin(found, { ...limit, sense: 'at-least' }),
  })
  const atUpper = (found: number): DecidingEnd => ({
    end: 'upper',
    limit: upperValue,
    value: found,
    margin: computeMargin(found, { ...limit, sense: 'at-most', value: upperValue }),
  })
  const [low, high] = [atLower(value), atUpper(value)]
  if (low.margin < 0) return low
  if (high.margin < 0) return high
  const [lowest, highest] = [atLower(range?.low ?? value), atUpper(range?.high ?? value)]
  return lowest.margin <= highest.margin ? lowest : highest
}

/** `At the lower end, 266 µm is below 270 µm.`; empty where the window is kept. */
function describeMissedEnds(value: number, range: QuantityRange | undefined, limit: Limit): string {
  const deciding = findDecidingEnd(value, range, limit)
  if (deciding === undefined || deciding.margin >= 0) return ''
  const say = ({ end, limit: at, value: found }: Pick<DecidingEnd, 'end' | 'limit' | 'value'>) =>
    `at the ${end} end, ${inSentence(found)} is ${end === 'lower' ? 'below' : 'above'} ${inSentence(at, limit.unit)}`
  // A range may be wider than the window: then both ends are missed, and each is named.
  const other: Pick<DecidingEnd, 'end' | 'limit' | 'value'> =
    deciding.end === 'lower'
      ? { end: 'upper', limit: limit.upperValue ?? limit.value, value: range?.high ?? value }
      : { end: 'lower', limit: limit.value, value: range?.low ?? value }
  const missesOther = other.end === 'upper' ? other.value > other.limit : other.value < other.limit
  return ` ${capitalise([deciding, ...(missesOther ? [other] : [])].map(say).join('; '))}.`
}

interface Decision {
  /** In the limit's unit. */
  readonly value: number
  /** Over tolerances and, where it rests on them, the spread of material constants. */
  readonly range?: QuantityRange | undefined
  /** Tolerances alone where absent. */
  readonly rangeOver?: RangeOver
  /** Of the value, where it ends where its relation ends. */
  readonly bound?: Bound | undefined
  /** Of both ends of the range. */
  readonly rangeBounds?: { readonly low: Bound | undefined; readonly high: Bound | undefined }
  /** Where the limit is computed too: its own range. The worst value is held against the worst limit. */
  readonly limitRange?: QuantityRange | undefined
  readonly limitRangeOver?: RangeOver
  readonly limit: Limit
  readonly places: readonly Place[]
  /** What the value is, with its owner: `inside radius of Notch`. The summary starts with it. */
  readonly what: string
  readonly equation: string
  /** The relation's source where it differs from the limit's. */
  readonly sourceKey?: SourceKey
  readonly cautions?: readonly string[]
  /** Somebody typed what is compared: nothing was calculated. */
  readonly isStated?: boolean
  /** What is compared is a number that somebody typed. */
  readonly isTyped?: boolean
  /** Where artwork shows the value. */
  readonly artworkAt?: ArtworkSpot | undefined
  /** Follows the comparison in the summary; a sentence. */
  readonly remark?: string
  /** In place of the comparison in words: a recorded observation says what was seen. */
  readonly summary?: string
}

const NO_CAUTIONS: readonly string[] = []

/**
 * Compares a value, and its range where there is one, with a limit: the verdict rule of every computed item. What misses the limit at
 * nominal fails; what holds at nominal and misses it at the worst corner of value and limit has a thin margin; only what holds there too meets.
 */
export function decide(decision: Decision): DecidedOutcome {
  const { value, range, limit, places, equation, cautions = NO_CAUTIONS } = decision
  const margin = computeMargin(value, limit)
  const holdsOverRange =
    (range === undefined || (holds(range.low, limit) && holds(range.high, limit))) &&
    (decision.limitRange === undefined ||
      holdsAgainstRange(range ?? { low: value, high: value }, limit, decision.limitRange))
  const verdict = margin < 0 ? 'fails' : holdsOverRange ? 'meets' : 'thin-margin'
  const { bound, limitRange } = decision
  const quantity: Quantity = bound === undefined ? { value, unit: limit.unit } : { value, unit: limit.unit, bound }
  const sourceKey = decision.sourceKey ?? limit.sourceKey
  const decidingEnd = findDecidingEnd(value, range, limit)
  const summary = decision.summary ?? summarise(decision)
  // Written out: spreading an optional field costs more than the comparison itself.
  const outcome: { -readonly [K in keyof DecidedOutcome]: DecidedOutcome[K] } =
    range === undefined
      ? { kind: 'decided', verdict, value: quantity, limit, margin, equation, sourceKey, cautions, places, summary }
      : {
          kind: 'decided',
          verdict,
          value: quantity,
          range,
          limit,
          margin,
          equation,
          sourceKey,
          cautions,
          places,
          summary,
        }
  if (limitRange !== undefined) outcome.limitRange = limitRange
  if (decidingEnd !== undefined) outcome.decidingEnd = decidingEnd
  if (decision.artworkAt !== undefined) outcome.artworkAt = decision.artworkAt
  if (decision.isStated === true) outcome.isStated = true
  if (decision.isTyped === true) outcome.isTyped = true
  return outcome
}

function summarise(decision: Decision): string {
  const { value, range, limit, what, bound, remark } = decision
  const spread = formatRangeInText(range, decision.rangeOver, limit, decision.rangeBounds)
  const limitSpread = formatRangeInText(decision.limitRange, decision.limitRangeOver, limit)
  const figure = `${getBoundPrefix(bound)}${inSentence(value, limit.unit)}${spread}`
  const missed = describeMissedEnds(value, range, limit)
  return `${capitalise(what)}: ${figure}; ${describeLimit(limit)}${limitSpread}.${missed}${remark === undefined ? '' : ` ${remark}`}`
}

/** ` (0.052 to 0.081 % over tolerances)`; empty where nothing moves. */
function formatRangeInText(
  range: QuantityRange | undefined,
  over: RangeOver = 'tolerances',
  { unit }: Limit,
  bounds?: Decision['rangeBounds'],
): string {
  return range === undefined || range.low === range.high
    ? ''
    : ` (${getBoundPrefix(bounds?.low)}${inSentence(range.low)} to ${getBoundPrefix(bounds?.high)}${inSentence(range.high, unit)} ${RANGE_OVER[over]})`
}

const holds = (value: number, limit: Limit): boolean => computeMargin(value, limit) >= 0

function holdsAgainstRange(range: QuantityRange, limit: Limit, { low, high }: QuantityRange): boolean {
  return [low, high].every((value) => {
    const moved = { ...limit, value }
    return holds(range.low, moved) && holds(range.high, moved)
  })
}

/** `at least 0.762 mm`, in the words used everywhere. */
export function describeLimit(limit: Limit): string {
  switch (limit.sense) {
    case 'at-most':
      return limit.value === 0 ? 'none allowed' : `at most ${inSentence(limit.value, limit.unit)}`
    case 'at-least':
      return `at least ${inSentence(limit.value, limit.unit)}`
    case 'within':
      return `${inSentence(limit.value)} to ${inSentence(limit.upperValue ?? limit.value, limit.unit)}`
    case 'equals':
      return `must be ${inSentence(limit.value, limit.unit)}`
  }
}

/** @param figure  what the model says all the same, and the limit it would be compared with */
export function cannotTell(
  what: string,
  { because, decidedBy }: Pick<CannotTellOutcome, 'because' | 'decidedBy'>,
  places: readonly Place[],
  { value, limit, artworkAt }: Pick<CannotTellOutcome, 'value' | 'limit' | 'artworkAt'> = {},
): CannotTellOutcome {
  return {
    kind: 'cannot-tell',
    because,
    decidedBy,
    ...(value === undefined ? {} : { value }),
    ...(limit === undefined ? {} : { limit }),
    ...(artworkAt === undefined ? {} : { artworkAt }),
    places,
    summary: `Cannot tell for ${what}: ${because}; ${decidedBy}.`,
  }
}

/** The outcome of an item that rests on a conductor of which no figure can be given. */
export function cannotTellFrom(
  conductor: Pick<ConductorResult, 'cannotTell'>,
  what: string,
  places: readonly Place[],
): CannotTellOutcome {
  return cannotTell(what, { because: conductor.cannotTell ?? '', decidedBy: 'measure it on a sample' }, places)
}

export function notComputed(
  path: MissingInput['path'],
  label: string,
  places: readonly Place[],
  rests?: NotComputedOutcome['rests'],
): NotComputedOutcome {
  const outcome: NotComputedOutcome = {
    kind: 'not-computed',
    missing: [{ path, label }],
    places,
    summary: `Not computed: ${label} is missing.`,
  }
  return rests === undefined ? outcome : { ...outcome, rests }
}

/** One outcome for several inputs that are missing together. `missing` is not empty. */
export function notComputedFrom(missing: readonly MissingInput[], places: readonly Place[]): NotComputedOutcome {
  const labels = missing.map((input) => input.label).join(', ')
  return {
    kind: 'not-computed',
    missing,
    places,
    summary: `Not computed: ${labels} ${missing.length === 1 ? 'is' : 'are'} missing.`,
  }
}

export function notApplicable(because: string, places: readonly Place[] = []): NotApplicableOutcome {
  return { kind: 'not-applicable', places, summary: `Not applicable: ${because}.` }
}

/** A limit that the design itself sets: a connector's window, required cycles, a date. */
export function makeDesignLimit(
  fields: Pick<Limit, 'key' | 'value' | 'unit' | 'sense'> & { upperValue?: number; sourceKey: SourceKey; name: string },
): Limit {
  const { name, ...limit } = fields
  return { ...limit, owner: { kind: 'design', name } }
}

/** A limit that follows from a published text or a relation, and that nobody overrides. */
export function makeSourceLimit(
  fields: Pick<Limit, 'key' | 'value' | 'unit' | 'sense'> & { upperValue?: number; sourceKey: SourceKey },
): Limit {
  return { ...fields, owner: getSourceOwner(fields.sourceKey) }
}

const NONE_ALLOWED = new Map<string, Limit>()

/** Nothing of the kind may be there: contradictions, layers in the wrong zone, statements that are missing. */
export function makeNoneAllowed(key: string, sourceKey: SourceKey): Limit {
  const known = NONE_ALLOWED.get(key)
  if (known !== undefined && known.sourceKey === sourceKey) return known
  const limit = makeSourceLimit({ key, value: 0, unit: 'count', sense: 'at-most', sourceKey })
  NONE_ALLOWED.set(key, limit)
  return limit
}
