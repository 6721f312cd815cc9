import { z } from 'zod'
import type { BendResult, FaceFilmResult, LeafResult } from './bend'
import type { ConductorResult } from './conductor'
import type { ConductorStrainResult, CopperPartResult } from './copper-strain'
import type { DamageResult, Evaluation } from './evaluation'
import type { ItemResult } from './item'
import { readOnce } from './read-once'
import { parseStoredJson, requireStoredShape } from './stored-document'
import type { ZoneResult } from './zone'

/**
 * Results of an earlier engine in today's shape. Their numbers and verdicts stay as recorded; what that engine did not report is null or
 * empty. Every field that results gain is filled in here.
 */
function liftResults(recorded: Evaluation): Evaluation {
  return {
    ...recorded,
    zones: recorded.zones.map((zone) => ({ ...NEW_IN_ZONE, ...zone })),
    bends: recorded.bends.map(liftBend),
    conductors: recorded.conductors.map((conductor) => ({ ...NEW_IN_LISTED_CONDUCTOR, ...conductor })),
    items: recorded.items.map(liftItem),
    damage: recorded.damage.map(liftDamage),
  }
}

const NEW_IN_ZONE = { contact: null, thermalCurl: null } satisfies Partial<ZoneResult>

const NEW_IN_BEND = {
  allowableRangePct: null,
  hangsOn: null,
  isLifeAtCap: false,
  leafLengthRangeMm: { low: 0, high: 0 },
  cycleRangePct: null,
  greatestStrainPct: null,
  modelLimits: [],
  knownAtLeast: null,
  isMinRadiusFloor: false,
  shieldShare: null,
  ownTests: [],
  states: null,
  freeFold: null,
  leafPull: null,
} satisfies Partial<BendResult>

const NEW_IN_HANDBOOK = { minRadiusRangeMm: null } satisfies Partial<BendResult['handbook']>

const NEW_IN_CONDUCTOR = {
  allowableRangePct: null,
  yieldRangePct: null,
  axisOffsetRangeFraction: null,
  survivalLifeRangeCycles: null,
  isLifeAtCap: false,
  lifeReach: null,
  ductilityLifeCycles: null,
  relationEndPct: null,
  cycleRangePct: null,
  greatestStrainPct: null,
  governingMaterial: null,
  parts: [],
  states: null,
} satisfies Partial<ConductorStrainResult>

const NEW_IN_LISTED_CONDUCTOR = {
  cannotTell: null,
  capacityRangeAmp: null,
  riseRangeDegC: null,
  resistanceRangeOhm: null,
  dropRangeVolt: null,
  dropAtLeastVolt: null,
} satisfies Partial<ConductorResult>

const NEW_IN_DAMAGE = {
  ductilityDamageSum: null,
  cappedDamageSum: 0,
  beyondModel: null,
} satisfies Partial<DamageResult>

function liftDamage(damage: DamageResult): DamageResult {
  const { damageSum, damageRange }: Omit<DamageResult, 'damageRange'> & Partial<DamageResult> = damage
  const filled: Partial<DamageResult> = { ...NEW_IN_DAMAGE, leastDamageSum: damageSum }
  return { ...filled, ...damage, damageRange: damageRange ?? { low: damageSum, high: damageSum } }
}

/** Before engine 2 a typed yes or no was told by its comparison's name alone. */
const OBSERVATION = 'recorded observation'

function liftItem(item: ItemResult): ItemResult {
  if (item.basis !== 'computed') return item
  const outcomes = item.outcomes.map((outcome) =>
    outcome.kind === 'decided' && outcome.equation === OBSERVATION ? { ...outcome, isStated: true as const } : outcome,
  )
  const decided = outcomes.filter((outcome) => outcome.kind === 'decided')
  const isStated = decided.length > 0 && decided.every((outcome) => outcome.isStated === true)
  return isStated ? { ...item, outcomes, basis: 'stated' } : item
}

function liftBend(bend: BendResult): BendResult {
  // Before peak and range were told apart, the peak stood for both.
  const filled: Partial<BendResult> = { ...NEW_IN_BEND, firstBendStrainPct: bend.peakStrainPct }
  return {
    ...filled,
    ...bend,
    handbook: { ...NEW_IN_HANDBOOK, ...bend.handbook },
    leaves: bend.leaves.map(liftLeaf),
    conductors: bend.conductors.map(liftConductor),
  }
}

function liftLeaf(leaf: LeafResult): LeafResult {
  const filled: Partial<LeafResult> = {
    // The elastic axis was all that there was.
    formedAxisDepthUm: leaf.neutralAxisDepthUm,
    decidingAxisDepthUm: leaf.neutralAxisDepthUm,
    radiusRatio: (leaf.insideRadiusMm * 1000) / leaf.thicknessUm,
    accuracyPct: null,
    momentAccuracyPct: null,
    accuracyNote: null,
    faceFilms: [],
  }
  const lifted = { ...filled, ...leaf }
  return { ...lifted, faceFilms: lifted.faceFilms.map(liftFilm) }
}

/** The yield was one figure before it had a spread. */
function liftFilm(film: FaceFilmResult): FaceFilmResult {
  const filled: Partial<FaceFilmResult> = {
    yieldRangePct: { low: film.yieldStrainPct, high: film.yieldStrainPct },
    fold: null,
  }
  return { ...filled, ...film }
}

function liftConductor(conductor: ConductorStrainResult): ConductorStrainResult {
  const filled: Partial<ConductorStrainResult> = { ...NEW_IN_CONDUCTOR, firstBendStrainPct: conductor.peakStrainPct }
  const lifted = { ...filled, ...conductor }
  // Told for the layer before it was told for each of its coppers.
  const filledPart: Partial<CopperPartResult> = {
    firstBendStrainPct: lifted.firstBendStrainPct,
    firstBendRangePct: null,
    allowableRangePct: null,
    yieldRangePct: null,
  }
  return { ...lifted, parts: lifted.parts.map((part) => ({ ...filledPart, ...part })) }
}

/**
 * What every engine has reported: by this a document is known as results. Fields that came later are filled in above, so that they are not
 * asked for here.
 */
const recordedSchema = z.looseObject({
  engineVersion: z.string(),
  designName: z.string(),
  zones: z.array(z.looseObject({ zoneId: z.string(), layers: z.array(z.looseObject({ layerId: z.string() })) })),
  bends: z.array(
    z.looseObject({
      bendId: z.string(),
      handbook: z.looseObject({}),
      leaves: z.array(z.looseObject({ thicknessUm: z.number(), insideRadiusMm: z.number() })),
      conductors: z.array(z.looseObject({ layerId: z.string(), peakStrainPct: z.number() })),
    }),
  ),
  conductors: z.array(z.looseObject({ conductorId: z.string() })),
  damage: z.array(z.looseObject({ damageSum: z.number() })),
  items: z.array(
    z.looseObject({
      itemId: z.string(),
      basis: z.string(),
      verdict: z.string(),
      outcomes: z.array(z.looseObject({ kind: z.string(), summary: z.string() })),
    }),
  ),
  headlineQuantities: z.array(z.looseObject({ label: z.string() })),
})

/** A document that has the shape by which results are known; what it says beyond that is its engine's. */
function requireRecorded(document: unknown): asserts document is Evaluation {
  requireStoredShape(STORED_RESULTS, recordedSchema, document)
}

const STORED_RESULTS = 'a stored calculation'

/**
 * Reads results that this program stored, whichever engine made them.
 *
 * @throws StoredDocumentError for what is damaged
 */
export const readStoredResults: (json: string) => Evaluation = readOnce((json) =>
  readStoredResultsDocument(parseStoredJson(STORED_RESULTS, json)),
)

/** The same, of results inside another document that was stored. */
export function readStoredResultsDocument(document: unknown): Evaluation {
  requireRecorded(document)
  return liftResults(document)
}
