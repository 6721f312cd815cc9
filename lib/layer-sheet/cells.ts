import { tidy } from '@/lib/engine/numerics'
import {
  digitsAsEntered,
  findLengthUnit,
  type LengthUnit,
  parseFoilThickness,
  parseLength,
  withHyphen,
} from '@/lib/engine/units'

export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string }

/** Marks a value that nobody has confirmed, so that a sheet which leaves and comes back does not turn it into a stated one. */
const ASSUMED = '(assumed)'

export const withAssumed = (text: string, isAssumed: boolean): string =>
  isAssumed ? `${text} ${ASSUMED}`.trim() : text

/** The text without the mark; a dash and "n/a" say nothing. */
export function readMark(cell: string): { readonly text: string; readonly isAssumed: boolean } {
  const trimmed = cell.trim()
  const isAssumed = trimmed.toLowerCase().endsWith(ASSUMED)
  const text = isAssumed ? trimmed.slice(0, -ASSUMED.length).trim() : trimmed
  return { text: /^([-–—]|n\/?a\.?)$/i.test(text) ? '' : text, isAssumed }
}

/** Tables of other programs write decimals with a comma; a thousands separator is refused by what reads the number. */
const withPoint = (text: string): string => text.replace(/^([-+]?\d*),(\d+)(?=\D*$)/, '$1.$2')

/** A thickness in um. Foils also by weight: `0.5 oz`. @param unit  of a number that carries none */
export function readThickness(text: string, unit: LengthUnit, isFoil: boolean): Read<number> {
  const parsed = isFoil ? parseFoilThickness(withPoint(text), unit) : parseLength(withPoint(text), unit)
  return parsed.ok ? { ok: true, value: tidy(parsed.valueUm) } : { ok: false, reason: parsed.message }
}

/** A tolerance in um, as a length or as a share of the thickness: `10 %`. */
export function readTolerance(text: string, unit: LengthUnit, thicknessUm: number): Read<number> {
  const bare = withPoint(withHyphen(text).replace(/^[±+-]\s*/, ''))
  const share = /^(\d+(?:\.\d*)?|\.\d+)\s*%$/.exec(bare)
  return share === null
    ? readThickness(bare, unit, false)
    : { ok: true, value: tidy((thicknessUm * Number(share[1])) / 100) }
}

/**
 * A share of copper, as a fraction. A bare number up to 1 may be a fraction or a percentage, as spreadsheets keep 50 % as 0.5: it is
 * refused rather than guessed.
 */
export function readShare(text: string): Read<number> {
  const match = /^(\d+(?:\.\d*)?|\.\d+)\s*(%?)$/.exec(withPoint(text))
  if (match === null) return { ok: false, reason: `"${text}" is not a share such as 40 %` }
  const percent = Number(match[1])
  if (match[2] === '' && percent <= 1)
    return { ok: false, reason: `"${text}" may be a fraction or a percentage: write it with %, such as 50 %` }
  if (percent > 100) return { ok: false, reason: `"${text}" is more than 100 %` }
  return { ok: true, value: tidy(percent / 100) }
}

export function writeShare(fraction: number): string {
  const percent = tidy(fraction * 100)
  return percent > 1 ? digitsAsEntered(percent) : `${digitsAsEntered(percent)} %`
}

/** A word of a list, by its stored value or its name. */
export function readChoice<T extends string>(text: string, names: Readonly<Record<T, string>>): Read<T> {
  const wanted = text.toLowerCase()
  const found = (Object.keys(names) as T[]).find(
    (value) => value.toLowerCase() === wanted || names[value].toLowerCase() === wanted,
  )
  return found === undefined
    ? { ok: false, reason: `"${text}" is none of: ${Object.values<string>(names).join(', ')}` }
    : { ok: true, value: found }
}

/** `Thickness, mil`, `Thickness (mil)` and `Thickness [mil]`: the name and the unit of the bare numbers below it. */
export function readHeading(heading: string): { readonly name: string; readonly unit: string | null } {
  const plain = withHyphen(heading.trim()).replace(/\s+/g, ' ')
  const match = /^(.*?)(?:,\s*|\s*[([])\s*([^,()[\]]+?)\s*[)\]]?$/.exec(plain)
  const [, name = '', unit = ''] = match ?? []
  const isUnit = findLengthUnit(unit) !== null || /^(oz(\/ft(2|²))?|%)$/i.test(unit)
  return isUnit ? { name: name.toLowerCase(), unit } : { name: plain.toLowerCase(), unit: null }
}

/** A bare number gets the unit that its heading states, so that it means the same wherever it is put. */
export function stateUnit(cell: string, unit: string | null): string {
  if (unit === null || unit === '%') return cell
  const { text, isAssumed } = readMark(cell)
  return /^[±+-]?\s*(\d+(?:[.,]\d*)?|[.,]\d+|\d+\s*\/\s*\d+)$/.test(text)
    ? withAssumed(`${text} ${unit}`, isAssumed)
    : cell
}
