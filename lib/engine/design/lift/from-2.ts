import { changeAt, changeEach, type JsonObject } from './json'

/**
 * What format 2 could not say becomes "not known yet", or what it meant by saying nothing; what was typed stays. An empty list meant nothing: it
 * is unknown, and no list is marked as empty.
 */
export function liftFrom2(document: JsonObject): JsonObject {
  let lifted: JsonObject = { ...document, formatVersion: 3 }
  lifted = changeAt(lifted, 'brief', (brief) => ({
    ...brief,
    cycleMinDegC: null,
    cycleMaxDegC: null,
    temperatureCycles: null,
    holePlatingQuality: null,
  }))
  lifted = changeAt(lifted, 'construction', (construction) =>
    changeEach(construction, 'zones', (zone) => ({
      ...zone,
      throughExpansionPpmPerC: null,
      throughModulusGpa: null,
      glassTransitionDegC: null,
    })),
  )
  lifted = changeAt(lifted, 'features', (features) => ({ ...features, none: [] }))
  return changeAt(lifted, 'features', (features) =>
    changeEach(
      changeEach(features, 'conductors', (conductor) => ({
        ...conductor,
        voltageVolt: null,
        isCovered: null,
        frequencyMhz: null,
      })),
      'holes',
      (hole) => ({ ...hole, zoneId: null }),
    ),
  )
}
