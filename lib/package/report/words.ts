import { citeSource, type Limit, type Quantity, SOURCES, type SourceKey } from '@/lib/engine'
import { formatValue } from '@/lib/engine/catalogue'

/** A value of an enumeration as people write it: `hot-air-solder-levelled`, `use-a`. */
export function sayWord(value: string | null): string {
  if (value === null) return 'not stated'
  return value.replaceAll('-', ' ').replace(/^use ([a-d])$/, (_, letter: string) => `use ${letter.toUpperCase()}`)
}

export function sayYesNo(value: boolean | null): string {
  return value === null ? 'not stated' : value ? 'yes' : 'no'
}

export function sayText(text: string): string {
  return text.trim() === '' ? 'not stated' : text
}

export function sayNumber(value: number | null | undefined, unit: Quantity['unit'] | 'perYear'): string {
  if (value === null || value === undefined) return 'not stated'
  return unit === 'perYear' ? `${value} per year` : formatValue(value, unit)
}

export function sayQuantity({ value, unit }: Quantity): string {
  return formatValue(value, unit)
}

export function sayLimit(limit: Limit): string {
  const value = formatValue(limit.value, limit.unit)
  switch (limit.sense) {
    case 'at-most':
      return `≤ ${value}`
    case 'at-least':
      return `≥ ${value}`
    case 'equals':
      return `= ${value}`
    case 'within':
      return `${formatValue(limit.value)} to ${formatValue(limit.upperValue ?? limit.value, limit.unit)}`
  }
}

/** `2027-03-01 09:05 UTC`: one form for every reader, whatever the machine's time zone. */
export function sayTime(iso: string): string {
  return `${iso.slice(0, 10)} ${iso.slice(11, 16)} UTC`
}

/** Results may carry a key that a later dictionary renamed; then the key itself is shown. */
export function saySource(key: string): string {
  return Object.hasOwn(SOURCES, key) ? citeSource(key as SourceKey) : key
}

export const BASIS_WORDS = { computed: 'computed', stated: 'stated', judgment: 'judged' } as const

export const VERDICT_WORDS = {
  meets: 'meets',
  'thin-margin': 'thin margin',
  fails: 'fails',
  'cannot-tell': 'cannot tell',
  'not-computed': 'not computed',
  'not-applicable': 'not applicable',
  'needs-judgment': 'for judgment',
} as const
