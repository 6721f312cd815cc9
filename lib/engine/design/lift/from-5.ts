import type { JsonObject } from './json'

/** What format 5 could not say becomes "not known yet"; what was typed stays. */
export function liftFrom5(document: JsonObject): JsonObject {
  return { ...document, formatVersion: 6 }
}
