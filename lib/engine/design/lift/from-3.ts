import { UNKNOWN_FORMING, UNKNOWN_IN_PRODUCT } from '../bend'
import { makeUnknownTerms } from '../brief-terms'
import { UNKNOWN_IMPEDANCE, UNKNOWN_RIGID_EDGES, UNKNOWN_SHIELD_GROUND } from '../features'
import { changeAt, changeEach, isObject, type JsonObject } from './json'

/** What format 3 could not say becomes "not known yet"; what was typed stays. */
export function liftFrom3(document: JsonObject): JsonObject {
  let lifted: JsonObject = { ...document, formatVersion: 4 }
  lifted = changeAt(lifted, 'brief', (brief) => ({
    flatAtDegC: null,
    ...brief,
  }))
  lifted = changeAt(lifted, 'brief', fillTerms)
  lifted = changeAt(lifted, 'construction', (construction) =>
    changeEach(construction, 'zones', (zone) => ({ statedToleranceUm: null, ...zone })),
  )
  lifted = changeEach(lifted, 'bends', (bend) => ({
    forming: UNKNOWN_FORMING,
    inProduct: UNKNOWN_IN_PRODUCT,
    ...NEW_STATES_OF_BEND,
    ...bend,
  }))
  lifted = changeAt(lifted, 'features', liftFeatures)
  lifted = changeAt(lifted, 'brief', gatherUses)
  lifted = changeEach(lifted, 'bends', (bend) => ({
    strainReliefKind: null,
    strainReliefWidthMm: null,
    leafLengths: null,
    leafStepMm: null,
    ...bend,
  }))
  return changeAt(lifted, 'features', fillFeatures)
}

/** The one use that a document could state is a set of one. */
function gatherUses({ installationUse = null, ...brief }: JsonObject): JsonObject {
  return { installationUses: installationUse === null ? [] : [installationUse], ...brief }
}

function fillFeatures(features: JsonObject): JsonObject {
  const lists: readonly (readonly [string, JsonObject])[] = [
    ['conductors', { returnAsLong: null, carriesPower: null }],
    ['outlineCorners', { bordersFlex: null, isPulled: null }],
    ['slits', { tearStop: null }],
    ['holes', { clearOfBends: null }],
    ['coverlayOpenings', { clearOfBends: null }],
    ['components', { clearOfBends: null }],
  ]
  return lists.reduce<JsonObject>(
    (filled, [list, unknown]) => changeEach(filled, list, (entry) => ({ ...unknown, ...entry })),
    { outlineCutBy: null, ...features },
  )
}

/** Records of terms that the brief did not have. */
function fillTerms(brief: JsonObject): JsonObject {
  const filled = Object.entries(makeUnknownTerms()).map(([record, unknown]) => {
    const stored = brief[record]
    return [record, isObject(stored) ? { ...unknown, ...stored } : (stored ?? unknown)]
  })
  return { ...brief, ...Object.fromEntries(filled) }
}

function liftFeatures(features: JsonObject): JsonObject {
  let lifted: JsonObject = {
    connectors: [],
    registrations: [],
    rigidEdges: UNKNOWN_RIGID_EDGES,
    shieldGround: UNKNOWN_SHIELD_GROUND,
    ...features,
  }
  lifted = changeEach(lifted, 'conductors', (conductor) => ({ impedance: UNKNOWN_IMPEDANCE, ...conductor }))
  lifted = changeEach(lifted, 'holes', (hole) => ({
    fromLayerId: null,
    toLayerId: null,
    filling: null,
    stiffenerEdgeDistanceMm: null,
    stiffenerHoleMm: null,
    ...hole,
  }))
  lifted = changeEach(lifted, 'coverlayOpenings', (opening) => ({ landMm: null, neededOpenMm: null, ...opening }))
  return changeEach(lifted, 'stiffeners', (stiffener) => ({ bonded: null, heatRatingDegC: null, ...stiffener }))
}

const NEW_STATES_OF_BEND: JsonObject = {
  flexesFromRadiusMm: null,
  flexesFromAngleDeg: null,
  foldedToRadiusMm: null,
  pullN: null,
  twistDeg: null,
  twistLengthMm: null,
  faceGapMm: null,
}
