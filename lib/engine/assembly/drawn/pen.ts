import type { DrawnValue } from '../../design'

/** Two readings of one drawing differ by as much. Our choice. */
export const AGREES_WITHIN_MM = 0.05
const AGREES_WITHIN_DEG = 0.5

export interface Pen {
  readonly values: DrawnValue[]
  /** Notes a drawn value, and whether what was stated agrees with it. */
  readonly note: (value: Omit<DrawnValue, 'disagrees'>) => void
}

export function makePen(): Pen {
  const values: DrawnValue[] = []
  return { values, note: (value) => values.push({ ...value, disagrees: disagrees(value) }) }
}

function disagrees({ stated, drawn, unit }: Omit<DrawnValue, 'disagrees'>): boolean {
  if (stated === null || drawn === null) return false
  if (typeof stated === 'number' && typeof drawn === 'number') {
    return Math.abs(stated - drawn) > (unit === 'deg' ? AGREES_WITHIN_DEG : AGREES_WITHIN_MM)
  }
  return stated !== drawn
}

const changed = new WeakMap<object, Map<string, object>>()

/** An entry with some fields replaced: the same object for the same values, so that what rests on an unchanged entry is taken over. */
export function withFields<T extends object>(entry: T, fields: Partial<T>): T {
  const keys = Object.keys(fields)
  if (keys.length === 0) return entry
  const key = JSON.stringify(fields)
  const kept = changed.get(entry) ?? new Map<string, object>()
  changed.set(entry, kept)
  const made = (kept.get(key) as T | undefined) ?? { ...entry, ...fields }
  kept.set(key, made)
  return made
}

/** In mm as people read it: to a nanometre, without the noise of sums in binary. */
/** A distance that is no drawn length, such as one between slanted lines, in whole micrometres and never larger than it is. */
export const asWholeUm = (mm: number): number => Math.floor(mm * 1000 + 1e-6) / 1000

export const asMm = (mm: number): number => Math.round(mm * 1e6) / 1e6
