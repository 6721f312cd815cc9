import { tidy } from '@/lib/engine/numerics'
import { parseNumber } from '@/lib/engine/units'
import { type ProcessRatesContent, REGISTRATION_DEMANDS } from '@/lib/fabrication/cost'

/** Texts as a person is typing them, by field. */
export type LineDraft = Readonly<Record<string, string>>

/** Lines that the fabricator replaces, by step id or `registration-` and the demand. */
export type RatesDraft = ReadonlyMap<string, LineDraft>

const REGISTRATION = 'registration-'

const write = (value: number | null): string => (value === null ? '' : String(tidy(value)))

export function makeDraft(content: ProcessRatesContent | null): RatesDraft {
  const lines = new Map<string, LineDraft>()
  for (const { stepId, rateIndex, setUpIndex, yieldFraction } of content?.steps ?? []) {
    lines.set(stepId, {
      rateIndex: write(rateIndex),
      setUpIndex: write(setUpIndex),
      yieldPct: write(yieldFraction === null ? null : 100 * yieldFraction),
    })
  }
  for (const { demand, extraMarginMm, extraSpacingMm, yieldFraction } of content?.registration ?? []) {
    lines.set(`${REGISTRATION}${demand}`, {
      extraMarginMm: write(extraMarginMm),
      extraSpacingMm: write(extraSpacingMm),
      yieldPct: write(100 * yieldFraction),
    })
  }
  return lines
}

/** @param line  null restores the illustrative line */
export function addLine(draft: RatesDraft, key: string, line: LineDraft | null): RatesDraft {
  const changed = new Map(draft)
  if (line === null) changed.delete(key)
  else changed.set(key, line)
  return changed
}

export function setField(draft: RatesDraft, key: string, field: string, text: string): RatesDraft {
  return addLine(draft, key, { ...draft.get(key), [field]: text })
}

export interface ReadRates {
  readonly content: ProcessRatesContent
  /** What cannot be read, by key and field. */
  readonly problems: ReadonlyMap<string, string>
}

/** Content of the sheet from the texts; a field that cannot be read or lies out of bounds is named. */
export function readDraft(draft: RatesDraft): ReadRates {
  const problems = new Map<string, string>()
  const read = (key: string, field: string, mayBeEmpty = false): number | null => {
    const text = (draft.get(key)?.[field] ?? '').trim()
    const refuse = (reason: string) => {
      problems.set(`${key}.${field}`, reason)
      return 0
    }
    if (text === '' && mayBeEmpty) return null
    const parsed = parseNumber(text)
    if (!parsed.ok) return refuse(parsed.message)
    const { value } = parsed
    if (field !== 'yieldPct') return value >= 0 ? value : refuse('Must not be negative.')
    return value > 0 && value <= 100 ? value / 100 : refuse('Must be above 0 and at most 100.')
  }
  const steps = [...draft.keys()]
    .filter((key) => !key.startsWith(REGISTRATION))
    .map((key) => ({
      stepId: key,
      rateIndex: read(key, 'rateIndex') ?? 0,
      setUpIndex: read(key, 'setUpIndex') ?? 0,
      yieldFraction: read(key, 'yieldPct', true),
    }))
  const registration = REGISTRATION_DEMANDS.filter((demand) => draft.has(`${REGISTRATION}${demand}`)).map((demand) => {
    const key = `${REGISTRATION}${demand}`
    return {
      demand,
      extraMarginMm: read(key, 'extraMarginMm') ?? 0,
      extraSpacingMm: read(key, 'extraSpacingMm') ?? 0,
      yieldFraction: read(key, 'yieldPct') ?? 1,
    }
  })
  return { content: { steps, registration }, problems }
}
