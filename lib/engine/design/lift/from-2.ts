import type { JsonObject } from './json'

/** What format 2 could not say becomes "not known yet", or what it meant by saying nothing; what was typed stays. */
export function liftFrom2(document: JsonObject): JsonObject {
  return { ...document, formatVersion: 3 }
}
