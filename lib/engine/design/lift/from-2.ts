import { changeAt, type JsonObject } from './json'

/**
 * What format 2 could not say becomes "not known yet", or what it meant by saying nothing; what was typed stays. An empty list meant nothing: it
 * is unknown, and no list is marked as empty.
 */
export function liftFrom2(document: JsonObject): JsonObject {
  return changeAt({ ...document, formatVersion: 3 }, 'features', (features) => ({ ...features, none: [] }))
}
