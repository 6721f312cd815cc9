import type { Leaf } from '../bending'
import type { Bend } from '../design'
import type { TestedConstant, TestedLife } from '../flex-tests'
import { type BoundedEstimate, computeMedianLife, lifeOverMedianFraction, strainRangeOfMotion } from '../life'
import { readEnds } from '../materials'
import type { OwnTestsUse, QuantityRange } from '../results'
import { getFatigueFoil, type SurvivalDemand } from './bend-allowables'
import type { BendSection, ConductorInBend } from './bend-section'

/** Foil of one nominal thickness may be that much thicker or thinner: our choice, about the tolerance of foil by weight (IPC-4562, from memory). */
const FOIL_THICKNESS_SHARE = 0.1
/** What was tested covers radii that lie that much beyond: our choice, about what the scatter of built thicknesses moves them. */
const RATIO_SHARE = 0.1
/** A ductility covers strains that lie that much beyond: our choice, as far as a computed strain may be off at the least radius (`accuracyOfStrainPct`). */
const STRAIN_SHARE = 0.25
/** Beyond this copper breaks in its first bend whatever was tested, and the relation gives no life. */
const LARGEST_STRAIN_RANGE = 4
/** Slopes that the relation of survival holds for. */
const SLOPES = { least: 0.5, most: 20 }

/** How a conductor's life is taken from tests. */
interface Chosen {
  readonly slope: TestedLife | null
  readonly ductility: TestedLife | null
  /** Tests that broke sooner than the relation says, with the share of its lives that they reached. */
  readonly short: { readonly tested: TestedLife; readonly lifeFraction: number } | null
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
 * Short    circuits that give no ductility here still say how long they lasted: where the low bound of their median lies below the relation's
 *          median, all lives are taken as that share of the relation's. Never more than the relation, so that nothing meets against tests.
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
    const found = {
      slope: demand.isSlopeTyped ? null : choose(covering, (tested) => readSurvivingShare(tested, bend, demand)),
      ductility: choose(
        covering.filter((tested) => isStrainedAlike(tested, bend, conductor, leaf)),
        (tested) => readLeastDuctility(tested, bend, conductor),
      ),
    }
    const chosen: Chosen = { ...found, short: findShort(covering, found.ductility, bend, conductor, leaf) }
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

/** Circuits fell short of the relation; a ductility that is taken from circuits holds that already. */
function findShort(
  covering: readonly TestedLife[],
  ductility: TestedLife | null,
  bend: Bend,
  conductor: ConductorInBend,
  leaf: Leaf,
): Chosen['short'] {
  const strain = leaf.strain.conductors.find(({ id }) => id === conductor.bendLayerId)
  if (ductility?.kind === 'circuit' || strain === undefined || !(strain.decidingPct > 0)) return null
  const foil = getFatigueFoil(withDuctility(conductor, ductility))
  const strainRange = strainRangeOfMotion(strain.decidingPct / 100, bend.motion)
  if (strainRange > LARGEST_STRAIN_RANGE) return null
  const relationCycles = computeMedianLife(foil, strainRange).cycles
  const ratio = (1000 * leaf.insideRadiusMm) / leaf.section.totalThicknessUm
  const readShare = ({ medians }: TestedLife): number | null => {
    // The next tighter radius that was tested breaks no later.
    const at = medians.findLast(({ radiusRatio }) => radiusRatio <= ratio * (1 + RATIO_SHARE)) ?? medians[0]
    return at === undefined ? null : Math.min(1, at.lowCycles / relationCycles)
  }
  const tested = choose(covering, readShare)
  const lifeFraction = tested === null ? null : readShare(tested)
  return tested === null || lifeFraction === null || lifeFraction >= 1 ? null : { tested, lifeFraction }
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

function applyTo(
  conductor: ConductorInBend,
  { slope, ductility, short }: Chosen,
  demand: SurvivalDemand,
): ConductorInBend {
  const weibullSlope = slope?.slope == null ? null : readWorseSlope(slope.slope, demand)
  return {
    ...withDuctility(conductor, ductility),
    ...(weibullSlope === null ? {} : { testedSlope: weibullSlope }),
    ...(short === null ? {} : { testedLifeFraction: short.lifeFraction }),
  }
}

function withDuctility(conductor: ConductorInBend, tested: TestedLife | null): ConductorInBend {
  const ductility = tested?.fatigueDuctility ?? null
  if (ductility === null) return conductor
  return { ...conductor, foil: { ...conductor.foil, fatigueDuctility: asSourced(ductility) } }
}

const FIT_SOURCE = 'weibullCensoredFit'

const asSourced = ({ value, low, high }: TestedConstant) => ({
  value,
  sourceKey: FIT_SOURCE,
  spread: { low, high, sourceKey: FIT_SOURCE },
})

function describeUses(
  conductor: ConductorInBend,
  { slope, ductility, short }: Chosen,
  demand: SurvivalDemand,
): OwnTestsUse[] {
  const sets = [...new Set([slope, ductility, short?.tested ?? null])]
  return sets.flatMap((tested) => {
    if (tested === null) return []
    const own = tested === slope ? tested.slope : null
    return [
      describeUse(conductor, tested, {
        slope: own,
        usedSlope: own === null ? null : readWorseSlope(own, demand),
        fatigueDuctility: tested === ductility ? tested.fatigueDuctility : null,
        lifeFraction: tested === short?.tested ? short.lifeFraction : null,
      }),
    ]
  })
}

function describeUse(
  { copper, leafIndex }: ConductorInBend,
  { owner, set, kind, specimens, failures, radiusRatio, strainRangePct, cycles, temperatureDegC, reports }: TestedLife,
  used: Pick<OwnTestsUse, 'slope' | 'usedSlope' | 'fatigueDuctility' | 'lifeFraction'>,
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
