import type { JsonObject } from './json'

/** What format 3 could not say becomes "not known yet"; what was typed stays. */
export function liftFrom3(document: JsonObject): JsonObject {
  return { ...document, formatVersion: 4 }
}
