import { getBoundPrefix, type Limit, type Quantity, type Unit } from '@/lib/engine'
import { asEntered, asResult, capitalise, digitsOfResult } from '@/lib/engine/units'

/** A value of an enumeration as people write it: `hot-air-solder-levelled`, `use-a`. */
export function formatWord(value: string | null): string {
  if (value === null) return 'not stated'
  return value.replaceAll('-', ' ').replace(/^use ([a-d])$/, (_, letter: string) => `use ${letter.toUpperCase()}`)
}

/** What somebody typed, or a part of a line, as a sentence that others stand beside: a capital first, one stop last. */
export function asSentence(text: string): string {
  const trimmed = text.trim()
  if (trimmed === '') return ''
  return `${capitalise(trimmed)}${/[.!?…]$/.test(trimmed) ? '' : '.'}`
}

export function formatYesNo(value: boolean | null): string {
  return value === null ? 'not stated' : value ? 'yes' : 'no'
}

export function formatText(text: string): string {
  return text.trim() === '' ? 'not stated' : text
}

/** A value that the design states, exactly. */
export function formatStated(value: number | null | undefined, unit: Unit): string {
  return value === null || value === undefined ? 'not stated' : asEntered(value, unit)
}

export function formatQuantity({ value, unit, bound }: Quantity): string {
  return `${getBoundPrefix(bound)}${asResult(value, unit)}`
}

export function formatLimit(limit: Limit): string {
  const value = asResult(limit.value, limit.unit)
  switch (limit.sense) {
    case 'at-most':
      return `≤ ${value}`
    case 'at-least':
      return `≥ ${value}`
    case 'equals':
      return `= ${value}`
    case 'within':
      return `${digitsOfResult(limit.value, limit.unit)} to ${asResult(limit.upperValue ?? limit.value, limit.unit)}`
  }
}

/** `2027-03-01 09:05:12 UTC`: one form for every reader, whatever the machine's time zone. */
export function formatTime(iso: string): string {
  return `${iso.slice(0, 10)} ${iso.slice(11, 19)} UTC`
}
