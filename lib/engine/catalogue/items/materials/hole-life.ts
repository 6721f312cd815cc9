import { DEFAULT_SURVIVAL_PCT } from '../../../assembly/bend-allowables'
import type { EvaluationContext } from '../../../context'
import { HOLE_PLATING_QUALITIES } from '../../../design'
import {
  computeBarrelStrain,
  computeMedianLife,
  EXTRAPOLATION_CYCLES,
  lifeOverMedianFraction,
  type PlatingQuality,
  strainMultiplier,
  WALL_WEIBULL_SLOPE,
} from '../../../life'
import { findLibraryMaterial, readEnds } from '../../../materials'
import { findRange } from '../../../numerics'
import { getOutcomeVerdict, type MissingInput, type Outcome, type Place } from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { cannotTell, decide, makeDesignLimit, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { listSharedGaps } from '../../hole-life-gaps'
import { SECTION_INPUTS } from '../../item-inputs'
import { findPlatedStack } from '../../plated-stack'
import { HOLE_PLATING_UM } from '../../process-figures'

export const holeLife = defineItem({
  id: 'hole-life',
  section: 'materials',
  severity: 'major',
  question: 'Do plated holes outlast the temperature cycles that they must bear?',
  titles: { meets: 'Plated holes outlast their temperature cycles', fails: 'A plated hole cracks too early' },
  appliesTo: { needs: ['plated-holes'], says: 'designs with plated holes' },
  limits: [],
  sourceKeys: [
    'platedHoleFatigue',
    'fatigueDuctility',
    'holePlatingQuality',
    'barrelScatter',
    'throughExpansion',
    'holePlating',
  ],
  restsOn: [
    ...SECTION_INPUTS,
    'features.holes',
    'brief.cycleMinDegC',
    'brief.cycleMaxDegC',
    'brief.temperatureCycles',
    'brief.operatingMinDegC',
    'brief.operatingMaxDegC',
    'brief.holePlatingQuality',
    'brief.lifeSurvivalPct',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'brief.temperatureCycles', worse: 'larger' },
    { path: 'brief.lifeSurvivalPct', worse: 'larger' },
    { path: 'features.holes[].wallPlatingUm', worse: 'smaller' },
  ],
  check: (context) => [
    ...listSharedGaps(context),
    ...context.design.features.holes.flatMap((hole, index) =>
      hole.plated === false ? [] : (withinCycles(context, hole, checkHole(context, hole, index)) ?? []),
    ),
  ],
})

type Hole = EvaluationContext['design']['features']['holes'][number]
/** Null where nothing but what is shared with other holes is missing. */
function checkHole(context: EvaluationContext, hole: Hole, index: number): Outcome | null {
  const { brief } = context.design
  const places: Place[] = [placeOf('hole', hole)]
  const at = (field: keyof Hole, label: string): MissingInput => ({ path: ['features', 'holes', index, field], label })
  if (hole.plated === null) return notComputedFrom([at('plated', `whether ${hole.name} is plated`)], places)
  const { cycleMinDegC, cycleMaxDegC, temperatureCycles } = brief
  const zone = context.design.construction.zones.find(({ id }) => id === hole.zoneId) ?? null
  const missing: MissingInput[] = []
  if (hole.drillMm === null) missing.push(at('drillMm', `drill of ${hole.name}`))
  if (hole.wallPlatingUm === null) missing.push(at('wallPlatingUm', `wall plating of ${hole.name}`))
  if (zone === null) missing.push(at('zoneId', `zone of ${hole.name}`))
  if (missing.length > 0) return notComputedFrom(missing, places)
  if (
    zone === null ||
    cycleMinDegC === null ||
    cycleMaxDegC === null ||
    temperatureCycles === null ||
    hole.drillMm === null ||
    hole.wallPlatingUm === null ||
    zone.throughExpansionPpmPerC === null ||
    zone.throughModulusGpa === null ||
    zone.glassTransitionDegC === null
  ) {
    return null
  }
  const what = `cycles of ${hole.name}`
  if (cycleMaxDegC >= zone.glassTransitionDegC) {
    return cannotTell(
      what,
      {
        because: `the cycles reach ${inSentence(cycleMaxDegC, 'degC')} and ${zone.name} goes soft at ${inSentence(zone.glassTransitionDegC, 'degC')}, past which it expands several times as much`,
        decidedBy: 'test coupons through these temperature cycles',
      },
      places,
    )
  }
  const stackUm = findPlatedStack(context.findZoneResult(zone.id))
  if (stackUm === null) {
    return cannotTell(
      what,
      {
        because: `${zone.name} has fewer than two conductor layers for a wall to join`,
        decidedBy: 'check the zone of the hole',
      },
      places,
    )
  }
  if (hole.wallPlatingUm === 0 || hole.wallPlatingUm >= 500 * hole.drillMm) {
    return cannotTell(
      what,
      { because: 'no ring of copper is left between drill and wall plating as stated', decidedBy: 'check both' },
      places,
    )
  }
  const copper = findLibraryMaterial(WALL_COPPER_ID)
  if (copper?.foil == null) {
    return notComputed(['features', 'holes', index, 'wallPlatingUm'], 'constants of plated copper', places)
  }
  const { foil } = copper
  const survivalPct = brief.lifeSurvivalPct ?? DEFAULT_SURVIVAL_PCT
  const survivingFraction = lifeOverMedianFraction(1 - survivalPct / 100, WALL_WEIBULL_SLOPE)
  const hasMotion = {
    drillMm: hole.drillMm,
    wallUm: hole.wallPlatingUm,
    expansionPpmPerC: zone.throughExpansionPpmPerC,
  }
  const { throughModulusGpa } = zone
  const medianFor = (
    quality: PlatingQuality,
    fatigueDuctility: number,
    yieldMpa: number,
    thicknessUm: number,
  ): number => {
    const wall = {
      modulusGpa: copper.modulusGpa.value,
      yieldStrengthMpa: yieldMpa,
      tensileStrengthMpa: foil.tensileStrengthMpa.value,
      fatigueDuctility,
    }
    const { strainRangeFraction } = computeBarrelStrain({
      ...hasMotion,
      stackModulusGpa: throughModulusGpa,
      stackThicknessMm: thicknessUm / 1000,
      temperatureRangeDegC: cycleMaxDegC - cycleMinDegC,
      copper: wall,
    })
    const effective = strainMultiplier(quality) * strainRangeFraction
    return computeMedianLife(wall, Math.max(effective, LEAST_STRAIN_FRACTION)).cycles
  }
  const decideFor = (quality: PlatingQuality, remark?: string): Outcome => {
    const value =
      survivingFraction * medianFor(quality, foil.fatigueDuctility.value, foil.yieldStrengthMpa.value, stackUm.nominal)
    const range = findRange(
      [
        { ...readEnds('fatigueDuctility', foil.fatigueDuctility), nominal: foil.fatigueDuctility.value },
        { ...readEnds('yieldStrengthMpa', foil.yieldStrengthMpa), nominal: foil.yieldStrengthMpa.value },
        stackUm,
      ],
      ([ductility = 0, yieldMpa = 0, um = 0]) => survivingFraction * medianFor(quality, ductility, yieldMpa, um),
    )
    return decide({
      value,
      range,
      rangeOver: 'both',
      limit: makeDesignLimit({
        key: 'temperatureCycles',
        value: temperatureCycles,
        unit: 'cycles',
        sense: 'at-least',
        sourceKey: 'platedHoleFatigue',
        name: 'temperature cycles',
      }),
      places,
      what: `cycles that ${inSentence(survivalPct, 'pct')} of the walls of ${hole.name} outlast`,
      equation:
        'N^-0.6 D_f^0.75 + 0.9 (S_u / E) [exp(D_f) / 0.36]^(0.1785 log10(1e5 / N)) = 1.6 (10 / K_Q) strain range of the wall',
      sourceKey: 'platedHoleFatigue',
      cautions: listCautions(value / survivingFraction, brief.lifeSurvivalPct === null),
      ...(remark === undefined ? {} : { remark }),
    })
  }
  const { holePlatingQuality } = brief
  if (holePlatingQuality !== null) return withinReach(decideFor(holePlatingQuality), hole, what)
  // The rating moves strain threefold: without it only what holds for every rating, or for none, is a verdict.
  const [best, worst] = [HOLE_PLATING_QUALITIES[0], HOLE_PLATING_QUALITIES[HOLE_PLATING_QUALITIES.length - 1] ?? 'poor']
  const atWorst = decideFor(worst, `So even with ${worst} plating; nobody has stated its quality.`)
  if (getOutcomeVerdict(atWorst) === 'meets') return withinReach(atWorst, hole, what)
  const atBest = decideFor(best, `So even with ${best} plating; nobody has stated its quality.`)
  if (getOutcomeVerdict(atBest) === 'fails') return atBest
  return notComputed(['brief', 'holePlatingQuality'], 'quality of the plating of hole walls', places)
}

/** Cycles that do not reach as far as operation does leave the hottest or coldest of it unasked: too short a life stays too short, a long one is not the part's. */
function withinCycles(context: EvaluationContext, hole: Hole, outcome: Outcome | null): Outcome | null {
  if (outcome === null || !['meets', 'thin-margin'].includes(getOutcomeVerdict(outcome))) return outcome
  const { cycleMinDegC, cycleMaxDegC, operatingMinDegC, operatingMaxDegC } = context.design.brief
  const past = [
    operatingMaxDegC !== null && cycleMaxDegC !== null && operatingMaxDegC > cycleMaxDegC
      ? `${inSentence(operatingMaxDegC, 'degC')} in operation, above the ${inSentence(cycleMaxDegC, 'degC')} of the cycles`
      : '',
    operatingMinDegC !== null && cycleMinDegC !== null && operatingMinDegC < cycleMinDegC
      ? `${inSentence(operatingMinDegC, 'degC')} in operation, below the ${inSentence(cycleMinDegC, 'degC')} of the cycles`
      : '',
  ].filter((text) => text !== '')
  if (past.length === 0) return outcome
  return cannotTell(
    `cycles of ${hole.name}`,
    {
      because: `the part sees ${past.join(', and ')}: the stated cycles are not all that its holes must bear`,
      decidedBy: 'state cycles that reach as far as operation does, or test coupons through them',
    },
    outcome.places,
  )
}

/**
 * The relation takes a wall that is whole. Plating that is thinner than what is quoted as enough has places with hardly any copper, of which it
 * knows nothing: too short a life stays too short, a long one is nobody's word. Source SOURCES.holePlating; that the relation ends there is our choice.
 */
function withinReach(outcome: Outcome, { wallPlatingUm }: Hole, what: string): Outcome {
  if (wallPlatingUm === null || wallPlatingUm >= HOLE_PLATING_UM.enough || getOutcomeVerdict(outcome) === 'fails') {
    return outcome
  }
  return cannotTell(
    what,
    {
      because: `the relation takes a whole wall, and ${inSentence(wallPlatingUm, 'um')} of plating, less than the ${inSentence(HOLE_PLATING_UM.enough, 'um')} that are said to be enough, has thin places`,
      decidedBy: 'plate thicker, or test cycle coupons',
    },
    outcome.places,
  )
}

/** The library's record whose constants are those of the relation. */
const WALL_COPPER_ID = 'copper-plated'

/** A stack that expands as copper does strains nothing; the relation ends far above this. */
const LEAST_STRAIN_FRACTION = 1e-9

function listCautions(medianCycles: number, isDefaultSurvival: boolean): string[] {
  const cautions = [
    `The relation is that of plated holes in rigid boards. Scatter: Weibull slope ${WALL_WEIBULL_SLOPE}, the least of three published for coupons; lots have failed earlier than their own fit. Qualify by coupons.`,
    'Soldering is not counted: each pass goes past the glass transition and takes a share of the life.',
  ]
  if (isDefaultSurvival) {
    cautions.push(`No share of parts that must survive is stated: ${DEFAULT_SURVIVAL_PCT} % stands in.`)
  }
  if (medianCycles > EXTRAPOLATION_CYCLES) cautions.push('Beyond a million cycles the relation is extrapolated.')
  return cautions
}
