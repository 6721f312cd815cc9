import { citeSource } from '@/lib/engine'
import { getLimitDefinition, LIMIT_KEYS } from '@/lib/engine/catalogue'
import type { LimitRow } from './limit-list'

/** The dictionary of limits as the sheet shows it. */
export function listLimitRows(): LimitRow[] {
  return LIMIT_KEYS.map((key) => {
    const { label, unit, sense, value, allowed, sourceKey, note } = getLimitDefinition(key)
    return { key, label, unit, sense, value, allowed, source: citeSource(sourceKey), note }
  })
}
