import { changeAt, type JsonObject } from './json'

/** What format 3 could not say becomes "not known yet"; what was typed stays. */
export function liftFrom3(document: JsonObject): JsonObject {
  let lifted: JsonObject = { ...document, formatVersion: 4 }
  lifted = changeAt(lifted, 'brief', (brief) => ({ flatAtDegC: null, ...brief }))
  return lifted
}
