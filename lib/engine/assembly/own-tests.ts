import type { Leaf } from '../bending'
import { LIFE_CAUTION_SHORT } from '../cautions'
import type { Bend } from '../design'
import type { TestedConstant, TestedLife } from '../flex-tests'
import { type BoundedEstimate, lifeOverMedianFraction, strainRangeOfMotion } from '../life'
import { readEnds } from '../materials'
import { nameOwnTests, type OwnTestsUse, type QuantityRange } from '../results'
import { inSentence } from '../units'
import type { SurvivalDemand } from './bend-allowables'
import type { BendSection, ConductorInBend } from './bend-section'

/** Foil of one nominal thickness may be that much thicker or thinner: our choice, about the tolerance of foil by weight (IPC-4562, from memory). */
const FOIL_THICKNESS_SHARE = 0.1
/** What was tested covers radii that lie that much beyond: our choice, about what the scatter of built thicknesses moves them. */
const RATIO_SHARE = 0.1
/** A ductility covers strains that lie that much beyond: our choice, as far as a computed strain may be off at the least radius (`accuracyOfStrainPct`). */
const STRAIN_SHARE = 0.25
/** Slopes that the relation of survival holds for. */
const SLOPES = { least: 0.5, most: 20 }

/** How a conductor's life is taken from tests. */
interface Chosen {
  readonly slope: TestedLife | null
  readonly ductility: TestedLife | null
}

/**
 * Puts slope and ductility from own flex tests in the place of the defaults, in conductors that the tests cover.
 *
 * Rule     a conductor is covered where use, motion, foil record, foil thickness and R/t are those of the tests; its ductility also takes the
 *          strain range of a cycle, which alone decides for bare foil. Plated copper is not covered: the tests are of foil. Where more cycles are
 *          required than were tested, tests count only where they are less kind than the defaults: what survived for a while proves no longer life. Nothing that the person typed gives way: a slope in the
 *          brief, or a material of the design's own (`livesFor`).
 * Slope    the worse end of its 90 % bounds, because slopes of few specimens are biased high. Ductility: best estimate, with the bounds as
 *          its spread, so that a verdict "meets" holds at the lower bound. Our choice.
 * Several  sets of one owner: the one with most failures; of several owners the one that gives the shorter life, since the part must suit
 *          every fabricator.
 */
export function applyOwnTests(
  bend: Bend,
  section: BendSection,
  { demand, testedLives }: { readonly demand: SurvivalDemand; readonly testedLives: readonly TestedLife[] },
  leaves: readonly Leaf[],
): { readonly section: BendSection; readonly uses: readonly OwnTestsUse[] } {
  if (bend.use !== 'dynamic' || testedLives.length === 0) return { section, uses: [] }
  const uses: OwnTestsUse[] = []
  const conductors = section.conductors.map((conductor) => {
    const leaf = leaves[conductor.leafIndex]
    if (leaf === undefined || conductor.plating !== null) return conductor
    const covering = testedLives.filter((tested) => covers(tested, bend, conductor, leaf))
    const chosen: Chosen = {
      slope: demand.isSlopeTyped ? null : choose(covering, (tested) => readSurvivingShare(tested, bend, demand)),
      ductility: choose(
        covering.filter((tested) => isStrainedAlike(tested, bend, conductor, leaf)),
        (tested) => readLeastDuctility(tested, bend, conductor),
      ),
    }
    uses.push(...describeUses(conductor, chosen, demand))
    return applyTo(conductor, chosen, demand)
  })
  return uses.length === 0 ? { section, uses } : { section: { ...section, conductors }, uses }
}

/** Tests of foils that a design has no material of its own for: what is typed there comes first. */
export function livesFor(
  testedLives: readonly TestedLife[],
  materials: readonly { readonly id: string }[],
): readonly TestedLife[] {
  const own = new Set(materials.map(({ id }) => id))
  return testedLives.filter(({ foil }) => !own.has(foil))
}

function covers(tested: TestedLife, bend: Bend, conductor: ConductorInBend, leaf: Leaf): boolean {
  return (
    tested.foil === conductor.material.id &&
    tested.motion === bend.motion &&
    isWithin(conductor.copper.foilUm, { low: tested.foilUm, high: tested.foilUm }, FOIL_THICKNESS_SHARE) &&
    isBentAlike(tested, leaf)
  )
}

/** More cycles are required than any specimen went through. */
const isBeyondTested = ({ cycles }: TestedLife, { requiredCycles }: Bend): boolean =>
  requiredCycles !== null && requiredCycles > cycles.high

/** Life at the survival asked for over the median, by the slope of the tests; null where it is not to be used. */
function readSurvivingShare(tested: TestedLife, bend: Bend, demand: SurvivalDemand): number | null {
  const slope = tested.slope === null ? null : readWorseSlope(tested.slope, demand)
  if (slope === null) return null
  const shareAt = (weibullSlope: number) => lifeOverMedianFraction(demand.survival.failureFraction, weibullSlope)
  return isBeyondTested(tested, bend) && shareAt(slope) >= shareAt(demand.survival.weibullSlope) ? null : shareAt(slope)
}

/** The low bound of the ductility of the tests; null where it is not to be used. */
function readLeastDuctility(tested: TestedLife, bend: Bend, { foil }: ConductorInBend): number | null {
  const ductility = tested.fatigueDuctility
  if (ductility === null) return null
  const usual = foil.fatigueDuctility
  const isKinder = ductility.value >= usual.value || ductility.low > readEnds('fatigueDuctility', usual).low
  return isBeyondTested(tested, bend) && isKinder ? null : ductility.low
}

/** Circuits by inside radius over thickness; bare foil has another thickness, and goes by strain alone. */
function isBentAlike({ radiusRatio }: TestedLife, leaf: Leaf): boolean {
  const ratio = (1000 * leaf.insideRadiusMm) / leaf.section.totalThicknessUm
  return radiusRatio === null || isWithin(ratio, radiusRatio, RATIO_SHARE)
}

function isStrainedAlike(tested: TestedLife, bend: Bend, conductor: ConductorInBend, leaf: Leaf): boolean {
  const strain = leaf.strain.conductors.find(({ id }) => id === conductor.bendLayerId)
  if (strain === undefined || tested.strainRangePct === null) return false
  return isWithin(100 * strainRangeOfMotion(strain.decidingPct / 100, bend.motion), tested.strainRangePct, STRAIN_SHARE)
}

const isWithin = (value: number, { low, high }: QuantityRange, share: number): boolean =>
  value >= low * (1 - share) && value <= high * (1 + share)

/** @param read  the figure by which sets of several owners are compared, smaller for a shorter life; null where a set does not tell it */
function choose(covering: readonly TestedLife[], read: (tested: TestedLife) => number | null): TestedLife | null {
  const byOwner = new Map<string, TestedLife>()
  for (const tested of covering) {
    if (read(tested) === null) continue
    const owner = JSON.stringify(tested.owner)
    const other = byOwner.get(owner)
    if (other === undefined || tested.failures > other.failures) byOwner.set(owner, tested)
  }
  let chosen: TestedLife | null = null
  for (const tested of byOwner.values()) {
    if (chosen === null || (read(tested) ?? 0) < (read(chosen) ?? 0)) chosen = tested
  }
  return chosen
}

/**
 * The end of the bounds that gives the shorter life: the low one where fewer than half may fail. Null where the bounds do not set it, or set it
 * where the relation of survival does not hold: nobody can tell then.
 */
function readWorseSlope({ low, high }: BoundedEstimate, { survival }: SurvivalDemand): number | null {
  const worse = survival.failureFraction <= 0.5 ? low : high
  if (worse === null || worse < SLOPES.least) return null
  if (worse > SLOPES.most) return survival.failureFraction <= 0.5 ? SLOPES.most : null
  return worse
}

function applyTo(conductor: ConductorInBend, { slope, ductility }: Chosen, demand: SurvivalDemand): ConductorInBend {
  const tested = ductility?.fatigueDuctility ?? null
  const weibullSlope = slope?.slope == null ? null : readWorseSlope(slope.slope, demand)
  return {
    ...conductor,
    ...(weibullSlope === null ? {} : { testedSlope: weibullSlope }),
    ...(tested === null ? {} : { foil: { ...conductor.foil, fatigueDuctility: asSourced(tested) } }),
  }
}

const FIT_SOURCE = 'weibullCensoredFit'

const asSourced = ({ value, low, high }: TestedConstant) => ({
  value,
  sourceKey: FIT_SOURCE,
  spread: { low, high, sourceKey: FIT_SOURCE },
})

function describeUses(conductor: ConductorInBend, { slope, ductility }: Chosen, demand: SurvivalDemand): OwnTestsUse[] {
  const sets = slope === ductility || ductility === null ? [slope] : [slope, ductility]
  return sets.flatMap((tested) =>
    tested === null
      ? []
      : [
          describeUse(conductor, tested, {
            slope: tested === slope && tested.slope !== null ? tested.slope : null,
            usedSlope: tested === slope && tested.slope !== null ? readWorseSlope(tested.slope, demand) : null,
            fatigueDuctility: tested === ductility ? tested.fatigueDuctility : null,
          }),
        ],
  )
}

function describeUse(
  { copper, leafIndex }: ConductorInBend,
  { owner, set, kind, specimens, failures, radiusRatio, strainRangePct, cycles, temperatureDegC, reports }: TestedLife,
  used: Pick<OwnTestsUse, 'slope' | 'usedSlope' | 'fatigueDuctility'>,
): OwnTestsUse {
  const { layer } = copper
  return {
    ...used,
    layerId: layer.id,
    layerName: layer.name,
    leafIndex,
    owner,
    set,
    kind,
    specimens,
    failures,
    radiusRatio,
    strainRangePct,
    cycles,
    temperatureDegC,
    reports,
  }
}

/** What a reader must know of a life that rests on tests. */
export function listOwnTestCautions(
  uses: readonly OwnTestsUse[],
  { survivalPct, survival }: SurvivalDemand,
  { requiredCycles }: Bend,
  medianLifeCycles: number | null,
): string[] {
  return uses.map((use) => {
    const said = [`${use.layerName}: life from own tests, ${describeFigures(use)}, ${LIFE_CAUTION_SHORT} still.`]
    said.push(`Tested ${describeTestedRange(use)}; figures elsewhere, such as the minimum radius, are extrapolated.`)
    // Median rank of the first of n by Benard's approximation.
    const firstRank = 0.7 / (use.specimens + 0.4)
    if (use.usedSlope !== null && survival.failureFraction < firstRank) {
      said.push(
        `${inSentence(survivalPct, 'pct')} survival lies beyond the first of ${use.specimens} specimens: it is extrapolated along the fitted line.`,
      )
    }
    if (requiredCycles !== null && requiredCycles > use.cycles.high) {
      said.push(
        'More cycles are required than were tested: the tests count where they give a shorter life than the defaults.',
      )
    }
    const isOutside =
      medianLifeCycles !== null && (medianLifeCycles < use.cycles.low || medianLifeCycles > use.cycles.high)
    if (isOutside)
      said.push(`The median life of ${inSentence(medianLifeCycles, 'cycles')} lies outside of the cycles tested.`)
    return said.join(' ')
  })
}

/** `set Hinge 18 of Quillmoor (workspace), n = 12, 9 failed: Weibull slope 1.9 (the worse end of its 90 % bounds; best estimate 2.8)` */
function describeFigures(use: OwnTestsUse): string {
  const { slope, usedSlope, fatigueDuctility } = use
  const figures = [
    ...(slope === null || usedSlope === null
      ? []
      : [
          `Weibull slope ${inSentence(usedSlope)} (the worse end of its 90 % bounds; best estimate ${inSentence(slope.value)})`,
        ]),
    ...(fatigueDuctility === null
      ? []
      : [
          `fatigue ductility ${inSentence(fatigueDuctility.value)} (90 % bounds ${inSentence(fatigueDuctility.low)} to ${inSentence(fatigueDuctility.high)})`,
        ]),
  ]
  return `${nameOwnTests(use)}: ${figures.join(', ')}`
}

function describeTestedRange({ radiusRatio, strainRangePct, cycles, temperatureDegC }: OwnTestsUse): string {
  const ratio = radiusRatio === null ? [] : [`R/t ${spanOf(radiusRatio)}`]
  const strain = strainRangePct === null ? [] : [`strain range ${spanOf(strainRangePct, 'pct')}`]
  const temperature = temperatureDegC === null ? 'temperature not stated' : `at ${inSentence(temperatureDegC, 'degC')}`
  return `${[...ratio, ...strain, `${spanOf(cycles, 'cycles')}`].join(', ')}, ${temperature}`
}

function spanOf({ low, high }: QuantityRange, unit?: 'pct' | 'cycles'): string {
  return low === high ? inSentence(low, unit) : `${inSentence(low)} to ${inSentence(high, unit)}`
}
