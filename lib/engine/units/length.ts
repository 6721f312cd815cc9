import { requireNumber, tidy } from '../numerics'
import { digitsAsComputed, digitsAsEntered, isTypedNumber, NO_FIGURE, withMinus, withoutSignOfZero } from './figures'
import { withHyphen } from './parse-number'
import { type Unit, withUnit } from './unit'

export type LengthUnit = Extract<Unit, 'um' | 'mm' | 'mil' | 'in' | 'uin'>

/** Exact by definition: the international inch is 25.4 mm. */
const UM_PER_UNIT: Record<LengthUnit, number> = { um: 1, mm: 1000, mil: 25.4, in: 25400, uin: 0.0254 }

/** Units a person may switch the display to. */
export const DISPLAY_LENGTH_UNITS = ['mm', 'um', 'mil', 'in'] as const satisfies readonly LengthUnit[]
export type DisplayLengthUnit = (typeof DISPLAY_LENGTH_UNITS)[number]

/** Which lengths are spoken of together: through the part, kept in um, or in plan, kept in mm. */
export type LengthKind = 'thickness' | 'plan'

/**
 * Decimals of computed lengths. A thickness resolves about 0.1 um, the finest that one in this trade is known to; a dimension in plan
 * about 1 um.
 */
const DECIMALS: Record<LengthKind, Record<LengthUnit, number>> = {
  thickness: { um: 1, mm: 4, mil: 3, in: 6, uin: 0 },
  plan: { um: 0, mm: 3, mil: 1, in: 4, uin: 0 },
}

/** A map, not an object: an object would know "constructor" as a unit. */
const UNIT_BY_SPELLING: ReadonlyMap<string, LengthUnit> = new Map([
  ['um', 'um'],
  ['µm', 'um'],
  ['μm', 'um'],
  ['micron', 'um'],
  ['microns', 'um'],
  ['mm', 'mm'],
  ['mil', 'mil'],
  ['mils', 'mil'],
  ['thou', 'mil'],
  ['in', 'in'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['"', 'in'],
  ['uin', 'uin'],
  ['µin', 'uin'],
  ['μin', 'uin'],
])

/** The unit that a heading or a cell names: `mil`, `µm`, `inch`; null where it is no unit of length. */
export function findLengthUnit(spelling: string): LengthUnit | null {
  return UNIT_BY_SPELLING.get(spelling.trim().toLowerCase()) ?? null
}

/**
 * @param value  any finite number in `unit`
 * @returns the same length in um
 * @throws  RangeError if value is not finite
 * Source   SOURCES.exactArithmetic
 * @example umFromLength(1.4, 'mil') is 35.56
 */
export function umFromLength(value: number, unit: LengthUnit): number {
  return requireNumber('value', value, {}) * UM_PER_UNIT[unit]
}

/** Inverse of umFromLength; same errors. */
export function lengthFromUm(valueUm: number, unit: LengthUnit): number {
  return requireNumber('valueUm', valueUm, {}) / UM_PER_UNIT[unit]
}

export type ParsedLength = { ok: true; valueUm: number } | { ok: false; message: string }

const LENGTH_PATTERN = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?)\s*([^\d\s.+-].*)?$/i

/**
 * Reads a typed length with or without a unit. Signs pass: whether a length may be negative is for the field to say.
 *
 * @param text         e.g. `0.15 mm`, `6mil`, `25`, `1.4"`
 * @param defaultUnit  what a bare number is taken as
 * @returns the length in um, or a sentence that says what is wrong with the text
 */
export function parseLength(text: string, defaultUnit: LengthUnit): ParsedLength {
  const trimmed = text.trim()
  if (trimmed === '') return { ok: false, message: 'Enter a length.' }
  if (trimmed.includes(',')) {
    return {
      ok: false,
      message: `"${trimmed}" contains a comma: write decimals with a point, and no thousands separator.`,
    }
  }
  const match = LENGTH_PATTERN.exec(withHyphen(trimmed))
  if (match === null) return { ok: false, message: `"${trimmed}" is not a length such as 0.15 mm, 25 um or 6 mil.` }
  const [, digits = '', spelling] = match
  const unit = spelling === undefined ? defaultUnit : findLengthUnit(spelling)
  if (unit === null) {
    return {
      ok: false,
      message: `"${spelling?.trim()}" is not a unit of length known here: use mm, um, mil, in or uin.`,
    }
  }
  const valueUm = Number(digits) * UM_PER_UNIT[unit]
  if (!Number.isFinite(valueUm)) return { ok: false, message: `"${trimmed}" is too large to be a length.` }
  return { ok: true, valueUm }
}

/**
 * Digits of a computed length, for a column whose head names the unit. Fixed decimals, so that columns align; parseLength reads them
 * back to within half of the last digit shown.
 *
 * @throws  RangeError if valueUm is not finite
 */
export function digitsOfLength(valueUm: number, unit: LengthUnit, kind: LengthKind = 'thickness'): string {
  return withMinus(withoutSignOfZero(lengthFromUm(valueUm, unit).toFixed(DECIMALS[kind][unit])))
}

/**
 * A computed length as shown to people, with its unit.
 *
 * @example formatLength(35.56, 'mil') is '1.400 mil'
 */
export function formatLength(valueUm: number, unit: LengthUnit, kind: LengthKind = 'thickness'): string {
  return withUnit(digitsOfLength(valueUm, unit, kind), unit)
}

/** Digits that a converted length keeps where it has no short form in the other unit. */
const CONVERTED_DIGITS = 6

/**
 * Digits of a stated length in the unit that the reader chose. In um and mm, where the design keeps it, it is exact. In other
 * units it is exact too where it was typed in them (35.56 um is 1.4 mil), and else rounded to six digits: what the design
 * holds never changes.
 */
export function digitsOfEnteredLength(value: number, kept: 'um' | 'mm', unit: LengthUnit): string {
  if (kept === unit) return digitsAsEntered(value)
  // From mm to um and back the decimal point moves, and no digit changes.
  const converted = tidy(lengthFromUm(umFromLength(value, kept), unit))
  if (unit === 'um' || unit === 'mm') return digitsAsEntered(converted)
  return digitsAsEntered(Number(converted.toPrecision(CONVERTED_DIGITS)))
}

/**
 * A stated length as a number of another unit with every digit it has, for files that are read back: `umFromLength`, tidied, gives the
 * stated number again.
 */
export function convertEnteredLength(value: number, kept: 'um' | 'mm', unit: LengthUnit): number {
  if (kept === unit) return value
  const exact = lengthFromUm(umFromLength(value, kept), unit)
  const short = tidy(exact)
  return keptLength(short, unit, kept) === value ? short : exact
}

/** The other way: a number in `unit` as the design or the sheet keeps it. */
export function keptLength(value: number, unit: LengthUnit, kept: 'um' | 'mm'): number {
  return kept === unit ? value : tidy(lengthFromUm(umFromLength(value, unit), kept))
}

/** A stated length in the unit that the reader chose; the rule is that of `digitsOfEnteredLength`. */
export function formatEnteredLength(value: number, kept: 'um' | 'mm', unit: LengthUnit): string {
  return withUnit(digitsOfEnteredLength(value, kept, unit), unit)
}

/** Digits of a length that a result holds: as stated where somebody typed it, else by the rule of computed lengths. */
export function digitsOfResultLength(value: number, kept: 'um' | 'mm', unit: LengthUnit): string {
  return isTypedNumber(value)
    ? digitsOfEnteredLength(tidy(value), kept, unit)
    : digitsOfLength(umFromLength(value, kept), unit, kept === 'um' ? 'thickness' : 'plan')
}

/** Digits of a computed radius, kept in mm: three in any unit, since a model says no more. */
export function digitsOfRadius(valueMm: number | null | undefined, chosen: LengthUnit): string {
  if (valueMm === null || valueMm === undefined) return NO_FIGURE
  return digitsAsComputed(lengthFromUm(umFromLength(valueMm, 'mm'), getShownUnit('mm', chosen)), 'minRadiusMm')
}

/** Where thickness is read in um, dimensions in plan are read in mm: nobody speaks of a radius of 8000 um. */
export function getShownUnit(kept: 'um' | 'mm', chosen: LengthUnit): LengthUnit {
  return kept === 'mm' && chosen === 'um' ? 'mm' : chosen
}
