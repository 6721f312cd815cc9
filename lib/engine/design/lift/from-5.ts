import { changeAt, changeEach, type JsonObject } from './json'

/** How far pads and width steps lie from the nearest bend was not asked. */
const UNKNOWN_DISTANCE: JsonObject = { nearestBend: null, clearOfBends: null }

/** What format 5 could not say becomes "not known yet"; what was typed stays. */
export function liftFrom5(document: JsonObject): JsonObject {
  const lifted = changeAt({ ...document, formatVersion: 6 }, 'features', (features) =>
    ['pads', 'widthSteps'].reduce<JsonObject>(
      (filled, list) => changeEach(filled, list, (entry) => ({ ...UNKNOWN_DISTANCE, ...entry })),
      features,
    ),
  )
  const told = changeAt(lifted, 'brief', (brief) =>
    changeAt(brief, 'tolerances', (tolerances) => ({ bendPositionMm: null, ...tolerances })),
  )
  return changeAt(told, 'plan', (plan) =>
    changeEach({ housing: null, ...plan }, 'connectorEnds', (end) => ({ target: null, ...end })),
  )
}
