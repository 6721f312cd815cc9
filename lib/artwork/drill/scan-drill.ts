import type { Unit } from '../gerber/format'
import type { Digits, Zeros } from './drill-reading'

/** What a drill file says of its numbers, and how they look. */
export interface DrillScan {
  readonly unit: Unit | null
  readonly zeros: Zeros | null
  readonly digits: Digits | null
  readonly digitsFrom: string
  /** Numbers of coordinates as written, x and y apart; the first ones of a long file. */
  readonly xs: readonly string[]
  readonly ys: readonly string[]
  /** Decimals of the tools' diameters, where all have the same number. */
  readonly toolDecimals: number | null
  readonly putsToolDown: boolean
}

const MOST_NUMBERS = 20_000

/** Header words of the drill format (XNC specification, "header", from memory; FILE_FORMAT and FORMAT in comments are common practice). */
export function scanDrill(text: string): DrillScan {
  let unit: Unit | null = null
  let zeros: Zeros | null = null
  let digits: Digits | null = null
  let digitsFrom = ''
  const xs: string[] = []
  const ys: string[] = []
  const decimals = new Set<number>()
  for (const line of linesOf(text)) {
    const comment =
      /FILE_FORMAT\s*=\s*(\d)\s*[:.]\s*(\d)/i.exec(line) ?? /FORMAT\s*=\s*\{\s*(\d)\s*[:.]\s*(\d)/i.exec(line)
    if (comment !== null && line.startsWith(';') && digits === null) {
      digits = [Number(comment[1]), Number(comment[2])]
      digitsFrom = 'a comment of the file'
    }
    if (line.startsWith(';')) continue
    const stated = /^(METRIC|INCH)\b(.*)$/.exec(line)
    if (stated !== null) {
      unit = stated[1] === 'METRIC' ? 'mm' : 'inch'
      const rest = stated[2] ?? ''
      if (/,\s*LZ/.test(rest)) zeros = 'leading kept'
      else if (/,\s*TZ/.test(rest)) zeros = 'trailing kept'
      const mask = /,\s*(0+)\.(0+)/.exec(rest)
      if (mask !== null) {
        digits = [(mask[1] ?? '').length, (mask[2] ?? '').length]
        digitsFrom = 'the header'
      }
    } else if (/^M7[12]\b/.test(line)) unit ??= line.startsWith('M71') ? 'mm' : 'inch'
    const tool = /^T\d+.*?C(\d*)\.(\d+)/.exec(line)
    if (tool !== null) decimals.add((tool[2] ?? '').length)
    if (xs.length < MOST_NUMBERS && /^(G0?[0-3]|G85|X|Y|M15)/.test(line)) {
      for (const [, axis, number] of line.matchAll(/([XY])([+-]?[\d.]+)/g)) (axis === 'X' ? xs : ys).push(number ?? '')
    }
  }
  const [only] = decimals
  return {
    ...{ unit, zeros, digits, digitsFrom, xs, ys },
    toolDecimals: decimals.size === 1 ? (only ?? null) : null,
    putsToolDown: /(^|[^A-Z])M15/.test(text),
  }
}

/** Lines without what ends them, and without spaces around. */
export function* linesOf(text: string): Generator<string> {
  let at = 0
  while (at < text.length) {
    let end = text.indexOf('\n', at)
    if (end < 0) end = text.length
    yield text.slice(at, end).trim()
    at = end + 1
  }
}
