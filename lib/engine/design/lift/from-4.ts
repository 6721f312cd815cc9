import type { JsonObject } from './json'

/** What format 4 could not say becomes "not known yet"; what was typed stays. */
export function liftFrom4(document: JsonObject): JsonObject {
  return { ...document, plan: document.plan ?? null, formatVersion: 5 }
}
