import { changeAt, changeEach, type JsonObject } from './json'

/** What format 4 could not say becomes "not known yet"; what was typed stays. */
export function liftFrom4(document: JsonObject): JsonObject {
  const lifted = changeEach(
    { ...document, plan: document.plan ?? null, formatVersion: 5 },
    'materials',
    (material) => ({
      maxSolderDegC: null,
      ...material,
    }),
  )
  return changeAt(lifted, 'features', (features) => {
    const withPads = changeEach(features, 'pads', (pad) => ({ zoneId: null, ...pad }))
    return changeEach(withPads, 'components', (component) => ({ zoneId: null, side: null, ...component }))
  })
}
