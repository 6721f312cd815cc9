import { type Unit, withUnit } from './unit'

/*
 * Numbers as people read them. There are three forms, named by purpose, and no other place writes numbers:
 *   as entered    exactly what the design holds, always
 *   as computed   digits by the rule of the figure
 *   in a sentence what was typed as it is, what was computed with three digits
 */

/**
 * Digits with a minus sign in place of the hyphen: a line may break after a hyphen, and +8 and −5 stand beside each other.
 * `withHyphen` reads it back.
 */
export const withMinus = (digits: string): string => digits.replace(/^-/, '−')

/** `+0.410`: digits whose sign is shown on either side of zero. */
export const withSign = (digits: string): string =>
  digits.startsWith('−') || Number(digits) === 0 ? digits : `+${digits}`

/** `±8`, or `+8 −5` where the sides differ; the digits of both as they were written, without a sign. */
export const asDeviation = (plus: string, minus: string): string => (plus === minus ? `±${plus}` : `+${plus} −${minus}`)

const SUPERSCRIPTS: Readonly<Record<string, string>> = {
  '-': '⁻',
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
}

/** From here on a number is written with a power of ten. */
const LARGE = 1e5
/** Below this too. */
const SMALL = 1e-4
/** A mantissa longer than this is harder to read than the number written out. */
const LONGEST_MANTISSA = 5
/** Beyond this a number written out is harder to read than any mantissa. */
const LARGEST_WRITTEN_OUT = 1e15

/** `2e+6` as `2 × 10⁶`. */
function raise(exponential: string): string {
  const [mantissa = '', exponent = '0'] = exponential.split('e')
  const power = [...String(Number(exponent))].map((digit) => SUPERSCRIPTS[digit] ?? digit).join('')
  return withMinus(`${mantissa.includes('.') ? mantissa.replace(/\.?0+$/, '') : mantissa} × 10${power}`)
}

/**
 * The digits of a number that somebody typed, or that a file stated: the shortest decimal that reads back as the same
 * number, so nothing is rounded.
 */
export function digitsAsEntered(value: number): string {
  const size = Math.abs(value)
  if (size === 0 || !Number.isFinite(value)) return withMinus(String(value))
  if (size >= SMALL && size < LARGE) return withMinus(String(value))
  const exponential = value.toExponential()
  const mantissa = exponential.slice(0, exponential.indexOf('e')).replace('-', '')
  const isWrittenOut = size >= LARGE && size < LARGEST_WRITTEN_OUT && mantissa.length > LONGEST_MANTISSA
  return isWrittenOut ? withMinus(String(value)) : raise(exponential)
}

/**
 * A stated value: exact, with its unit.
 *
 * @example asEntered(12.345, 'mm') is '12.345 mm'; asEntered(2_000_000, 'cycles') is '2 × 10⁶ cycles'
 */
export function asEntered(value: number, unit?: Unit): string {
  return withUnit(digitsAsEntered(value), unit)
}

interface Rule {
  readonly unit?: Unit
  /** Decimals, so that a column aligns; else significant digits. */
  readonly decimals?: number
  readonly digits?: number
  /** Whole numbers alone, rounded to the digits: 34000, not 34123. */
  readonly isWhole?: boolean
  /** Without zeros at the end. */
  readonly isTrimmed?: boolean
}

/** Digits of each computed figure: what its model and its inputs are good for, and no more. */
const COMPUTED = {
  /** 0.1 um is the finest that a thickness in this trade is known to. */
  thicknessUm: { unit: 'um', decimals: 1 },
  strainPct: { unit: 'pct', decimals: 3 },
  /** The strain at the surface, a geometric figure that readers compare with tables. */
  surfaceStrainPct: { unit: 'pct', decimals: 2 },
  minRadiusMm: { unit: 'mm', digits: 3 },
  developedLengthMm: { unit: 'mm', decimals: 3 },
  momentNmm: { unit: 'newton-mm', digits: 3 },
  forceN: { unit: 'newton', digits: 3 },
  angleDeg: { unit: 'deg', decimals: 0 },
  temperatureDegC: { unit: 'degC', decimals: 1 },
  radiusRatio: { unit: 'ratio', digits: 3 },
  accuracyPct: { unit: 'pct', digits: 1 },
  /** Shares: to a tenth of a per cent. */
  sharePct: { unit: 'pct', decimals: 1 },
  /** Shares that only rank: of a variance, of coverage, of an angle. */
  roughSharePct: { unit: 'pct', decimals: 0 },
  /** Shares near nothing: how many parts miss a window. */
  smallSharePct: { unit: 'pct', digits: 2 },
  excessPct: { unit: 'pct', decimals: 2 },
  /** Strain against allowable, life against need: 1.00 is the limit. */
  loadFraction: { unit: 'fraction', decimals: 2 },
  /** Life used up, of 1. */
  damageFraction: { unit: 'fraction', digits: 3, isTrimmed: true },
  capability: { unit: 'ratio', decimals: 2 },
  costIndex: { unit: 'ratio', decimals: 3 },
  /** The parts of an index, which are to add up. */
  costIndexPart: { unit: 'ratio', decimals: 4 },
  /** Means of whole numbers. */
  roundsPerQuestion: { decimals: 1 },
  daysUntilAgreed: { decimals: 1 },
  costTimes: { unit: 'ratio', decimals: 1 },
  /** Sheets of material, as they are quoted; the head or the sentence names the unit. */
  areaCm2: { digits: 3 },
  areaM2: { digits: 3 },
  sizeMm: { unit: 'mm', decimals: 2 },
  resistanceOhm: { unit: 'ohm', digits: 3 },
  /** Constants are known to some per cent, and figures beside each other are compared to a tenth. */
  impedanceOhm: { unit: 'ohm', decimals: 1 },
  /** Of one section by finer and finer pieces: how far the solution itself stands still. */
  refinedOhm: { unit: 'ohm', decimals: 3 },
  delayPsPerMm: { decimals: 2 },
  permittivity: { decimals: 2 },
  lossDbPerM: { decimals: 2 },
  crosstalkPct: { unit: 'pct', decimals: 2 },
  dropVolt: { unit: 'volt', digits: 3 },
  riseDegC: { unit: 'degC', digits: 3 },
  currentAmp: { unit: 'amp', digits: 3 },
  foilWeightOzPerFt2: { unit: 'oz-per-ft2', decimals: 2 },
  /** A tick of an axis, where three digits are enough to find the place. */
  tick: { digits: 2, isTrimmed: true },
  /** An input of a swing, or what the swing moves. */
  swing: { digits: 3, isTrimmed: true },
  times: { digits: 2, isTrimmed: true },
  /** Two digits are all that a fatigue estimate deserves. */
  lifeCycles: { unit: 'cycles', digits: 2, isWhole: true },
  /** Of the draws of a simulation. */
  drawSharePct: { unit: 'pct', decimals: 2 },
} as const satisfies Record<string, Rule>

export type ComputedFigure = keyof typeof COMPUTED

/** Stands where a figure was not computed, in tables. */
export const NO_FIGURE = '–'

/** The digits of a computed figure, for a column whose head names the unit. */
export function digitsAsComputed(value: number | null | undefined, figure: ComputedFigure): string {
  if (value === null || value === undefined) return NO_FIGURE
  const rule: Rule = COMPUTED[figure]
  if (rule.decimals !== undefined) return withMinus(withoutSignOfZero(value.toFixed(rule.decimals)))
  const digits = toSignificant(value, rule.digits ?? 3, rule.isWhole === true)
  return rule.isTrimmed === true && digits.includes('.') && !digits.includes('×')
    ? digits.replace(/\.?0+$/, '')
    : digits
}

/**
 * A computed figure with its unit.
 *
 * @example asComputed(0.41023, 'strainPct') is '0.410 %'
 */
export function asComputed(value: number | null | undefined, figure: ComputedFigure): string {
  if (value === null || value === undefined) return NO_FIGURE
  const rule: Rule = COMPUTED[figure]
  return withUnit(digitsAsComputed(value, figure), rule.unit)
}

/** A value that rounds to nothing must not read "-0.0". */
export function withoutSignOfZero(digits: string): string {
  return Number(digits) === 0 ? digits.replace('-', '') : digits
}

/** Significant digits, zeros at the end kept; a power of ten only where the number would be hard to read without. */
function toSignificant(value: number, digits: number, isWhole: boolean): string {
  const size = Math.abs(value)
  if (size === 0) return '0'
  if (isWhole && size < LARGE) return withMinus(String(Math.round(Number(value.toPrecision(digits)))))
  if (size >= LARGE || size < SMALL) return raise(value.toExponential(digits - 1))
  return withMinus(size >= 10 ** digits ? String(Math.round(value)) : value.toPrecision(digits))
}

/**
 * A result whose unit alone is known, as results list them: counts whole, cycles with two digits, the rest with four.
 */
export function digitsOfResult(value: number, unit: Unit): string {
  if (unit === 'count' || unit === 'days') return withMinus(String(Math.round(value)))
  const short = shortForm(value)
  if (short !== null) return digitsAsEntered(short)
  const size = Math.abs(value)
  if (unit === 'cycles') return size >= LARGE ? raise(value.toExponential(1)) : withMinus(String(Math.round(value)))
  if (size >= 1e6 || size < SMALL) return raise(value.toExponential(1))
  return withMinus(String(Number(value.toPrecision(size >= 1000 ? 5 : 4))))
}

/** A result with its unit; the digits are those of `digitsOfResult`. */
export function asResult(value: number, unit: Unit): string {
  return withUnit(digitsOfResult(value, unit), unit)
}

/** Digits up to which a number is taken for one that somebody typed. */
const TYPED_DIGITS = 6
const LARGEST_POWER = 15
const POWERS_OF_TEN: readonly number[] = Array.from({ length: LARGEST_POWER + 1 }, (_, power) => 10 ** power)

/**
 * The number itself where it has no more digits than people type, else null. A computed value almost never does, and
 * where it does it is exact. By scale rather than by text: an evaluation writes hundreds of numbers.
 */
function shortForm(value: number): number | null {
  const size = Math.abs(value)
  if (size === 0 || Number.isInteger(value)) return size < 10 ** TYPED_DIGITS || value % 1000 === 0 ? value : null
  const power = TYPED_DIGITS - 1 - Math.floor(Math.log10(size))
  if (power > LARGEST_POWER || power < 0) return null
  const scale = POWERS_OF_TEN[power] ?? Number.NaN
  const scaled = value * scale
  const whole = Math.round(scaled)
  // A relative distance of 1e-12 is what arithmetic on a typed number leaves.
  return Math.abs(scaled - whole) <= 1e-12 * Math.abs(whole) ? whole / scale : null
}

/** Has a number no more digits than people type? */
export function isTypedNumber(value: number): boolean {
  return shortForm(value) !== null
}

/**
 * A number in a sentence: what somebody typed as it is, what was computed with three digits.
 *
 * @example inSentence(12.345, 'mm') is '12.345 mm'; inSentence(0.4102345, 'pct') is '0.41 %'
 */
export function inSentence(value: number, unit?: Unit): string {
  return withUnit(digitsInSentence(value, unit), unit)
}

function digitsInSentence(value: number, unit: Unit | undefined): string {
  const short = shortForm(value)
  if (short !== null) return digitsAsEntered(short)
  const size = Math.abs(value)
  if (size >= LARGE || size < 1e-3) return raise(value.toExponential(1))
  const scale = size >= 100 ? 1 : size >= 10 ? 10 : size >= 1 ? 100 : 1000
  const rounded = Math.round(value * scale) / scale
  // "99.9999 %" must not read as certainty: every nine is kept.
  return withMinus(String(unit === 'pct' && size < 100 && Math.abs(rounded) === 100 ? keepNines(value) : rounded))
}

/** A share just below the whole, down to the first digit that tells it from the whole. */
function keepNines(pct: number): number {
  const digits = Math.min(12, Math.ceil(-Math.log10(100 - Math.abs(pct))) + 1)
  const short = Number(pct.toFixed(digits))
  return Math.abs(short) === 100 ? pct : short
}

/** How an input for numbers writes what is entered: in full, no groups. */
export const NUMBER_ENTRY_FORMAT = { maximumFractionDigits: 15, useGrouping: false } as const

/** `2 000 000`: things that are counted out, in full; the groups are parted by spaces that no line breaks at. */
export function asCount(count: number): string {
  if (count >= LARGEST_WRITTEN_OUT) return raise(count.toExponential(2))
  return String(Math.round(count)).replace(/\B(?=(\d{3})+$)/gu, '\u00a0')
}

/** `1 file`, `3 files`. */
export function countOf(count: number, one: string, many = `${one}s`): string {
  return `${asCount(count)} ${count === 1 ? one : many}`
}

/** A tick of an axis whose steps are a round number: as many decimals as the steps have. */
export function digitsOfTick(value: number, decimals: number): string {
  return withMinus(withoutSignOfZero(value.toFixed(decimals)))
}

const BYTES_PER_MIB = 1024 * 1024

/** A size of files, in binary units as quotas are. */
export function asFileSize(bytes: number): string {
  if (bytes < 1024) return `${bytes} bytes`
  if (bytes < BYTES_PER_MIB) return `${(bytes / 1024).toFixed(1)} KiB`
  const mib = bytes / BYTES_PER_MIB
  return `${mib >= 100 ? Math.round(mib) : mib.toFixed(1)} MiB`
}
