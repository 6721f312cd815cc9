import { changeAt, changeEach, isObject, type JsonObject } from './json'

/** Generic plated copper of the library: format 1 knew no material of the plating. */
const PLATED_COPPER_ID = 'copper-plated'

/**
 * Format 1 had no spread of constants, one material for foil and plating, no statement of which copper a zone has plated, no hatch, no
 * finish on contacts, and no test of flexing. It took pads-only plating to be absent from flex zones.
 */
export function liftFrom1(document: JsonObject): JsonObject {
  const processes = listPlatingProcesses(document)
  let lifted: JsonObject = { ...document, formatVersion: 2, assumed: [] }
  lifted = changeEach(lifted, 'materials', liftMaterial)
  lifted = changeAt(lifted, 'construction', (construction) =>
    changeEach(changeEach(construction, 'layers', liftLayer), 'zones', (zone) => liftZone(zone, processes)),
  )
  lifted = changeEach(lifted, 'bends', (bend) => ({
    ...bend,
    flexTest: { cyclesPerMinute: null, travelMm: null, mandrelDiameterMm: null, pointsOfApplication: '' },
  }))
  return changeAt(lifted, 'features', (features) =>
    changeEach(features, 'holes', (hole) => ({ ...hole, wallPlatingUm: null })),
  )
}

function listPlatingProcesses(document: JsonObject): ReadonlyMap<unknown, unknown> {
  const { construction } = document
  const layers = isObject(construction) && Array.isArray(construction.layers) ? construction.layers : []
  return new Map(
    layers.flatMap((layer: unknown) =>
      isObject(layer) && isObject(layer.plating) ? [[layer.id, layer.plating.process] as const] : [],
    ),
  )
}

/** Any constant, at any depth: a number with its source gets a spread that nobody stated. */
function liftMaterial(material: JsonObject): JsonObject {
  const withSpreads = Object.fromEntries(
    Object.entries(material).map(([key, value]) => [
      key,
      key === 'foil' && isObject(value) ? liftFoil(value) : liftConstant(value),
    ]),
  )
  return { ...withSpreads, expansionPpmPerC: null, yieldStrainPct: null, flowFraction: null }
}

const liftFoil = (foil: JsonObject): JsonObject =>
  Object.fromEntries(Object.entries(foil).map(([key, value]) => [key, liftConstant(value)]))

const liftConstant = (value: unknown): unknown =>
  isObject(value) && 'sourceKey' in value ? { ...value, spread: null } : value

function liftLayer(layer: JsonObject): JsonObject {
  return changeAt(layer, 'plating', (plating) => ({
    ...plating,
    materialId: plating.process === 'none' ? null : PLATED_COPPER_ID,
  }))
}

function liftZone(zone: JsonObject, processes: ReadonlyMap<unknown, unknown>): JsonObject {
  const withPresence = changeEach(zone, 'presence', (presence) => ({
    ...presence,
    platedCopper: processes.get(presence.layerId) === 'button' ? placePadsOnlyPlating(zone.kind) : null,
    hatch: null,
  }))
  return { ...withPresence, contactFinish: null }
}

/** Pads-only plating is on lands, and flex zones had none. A connector end may have either: nobody had said. */
function placePadsOnlyPlating(zoneKind: unknown): 'none' | 'pads-only' | null {
  if (zoneKind === 'flex') return 'none'
  return zoneKind === 'finger' ? null : 'pads-only'
}
