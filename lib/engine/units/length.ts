import { requireNumber } from '../numerics'

/** `uin` is the microinch of plating call-outs. */
export type LengthUnit = 'um' | 'mm' | 'mil' | 'in' | 'uin'

/** Exact by definition: the international inch is 25.4 mm. */
const UM_PER_UNIT: Record<LengthUnit, number> = { um: 1, mm: 1000, mil: 25.4, in: 25400, uin: 0.0254 }

/** Units a person may switch the display to. */
export const DISPLAY_LENGTH_UNITS = ['mm', 'um', 'mil'] as const satisfies readonly LengthUnit[]

/** Decimals that resolve about 0.1 um, the finest that a thickness in this trade is known to. */
const DECIMALS: Record<LengthUnit, number> = { um: 1, mm: 4, mil: 3, in: 6, uin: 0 }

/** Symbol as printed beside a number. */
const UNIT_SYMBOL: Record<LengthUnit, string> = { um: 'µm', mm: 'mm', mil: 'mil', in: 'in', uin: 'µin' }

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
  const match = LENGTH_PATTERN.exec(trimmed)
  if (match === null) return { ok: false, message: `"${trimmed}" is not a length such as 0.15 mm, 25 um or 6 mil.` }
  const [, digits = '', spelling] = match
  const unit = spelling === undefined ? defaultUnit : UNIT_BY_SPELLING.get(spelling.trim().toLowerCase())
  if (unit === undefined) {
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
 * A length as shown to people, with its unit. Fixed decimals, so that columns align; parseLength reads it back to
 * within half of the last digit shown.
 *
 * @param valueUm   any finite number
 * @param decimals  default: about 0.1 um in every unit
 * @throws  RangeError if valueUm is not finite or decimals lies outside 0 to 12
 * @example formatLength(35.56, 'mil') is '1.400 mil'
 */
export function formatLength(valueUm: number, unit: LengthUnit, decimals: number = DECIMALS[unit]): string {
  requireNumber('decimals', decimals, { atLeast: 0, atMost: 12 })
  const digits = lengthFromUm(valueUm, unit).toFixed(decimals)
  // A length that rounds to nothing must not read "-0.0".
  const unsigned = Number(digits) === 0 ? digits.replace('-', '') : digits
  return `${unsigned} ${UNIT_SYMBOL[unit]}`
}
