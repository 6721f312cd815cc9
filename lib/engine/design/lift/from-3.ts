import { makeUnknownTerms } from '../brief-terms'
import { changeAt, changeEach, isObject, type JsonObject } from './json'

/** What format 3 could not say becomes "not known yet"; what was typed stays. */
export function liftFrom3(document: JsonObject): JsonObject {
  let lifted: JsonObject = { ...document, formatVersion: 4 }
  lifted = changeAt(lifted, 'brief', (brief) => ({ flatAtDegC: null, ...brief }))
  lifted = changeAt(lifted, 'brief', fillTerms)
  lifted = changeAt(lifted, 'features', (features) =>
    changeEach(features, 'holes', (hole) => ({ fromLayerId: null, toLayerId: null, filling: null, ...hole })),
  )
  return lifted
}

/** Records of terms that the brief did not have. */
function fillTerms(brief: JsonObject): JsonObject {
  const filled = Object.entries(makeUnknownTerms()).map(([record, unknown]) => {
    const stored = brief[record]
    return [record, isObject(stored) ? { ...unknown, ...stored } : (stored ?? unknown)]
  })
  return { ...brief, ...Object.fromEntries(filled) }
}
