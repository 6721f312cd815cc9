import { changeAt, changeEach, type JsonObject } from './json'

/** There were no classes of nets, and nobody was asked whether a split plane goes on under a line. */
export function liftFrom6(document: JsonObject): JsonObject {
  return changeAt({ ...document, formatVersion: 7 }, 'features', (features) =>
    changeEach({ netClasses: [], ...features }, 'conductors', (conductor) =>
      changeAt({ netClassId: null, ...conductor }, 'impedance', (impedance) => ({
        referenceUnbroken: null,
        ...impedance,
      })),
    ),
  )
}
