import {
  type ConductorStrain,
  type ConductorStrainRange,
  computeMinRadiusForStrain,
  computeStrainRanges,
  type FaceRange,
  LEAST_RADIUS_RATIO,
  type Leaf,
  type Loading,
} from '../bending'
import type { Bend } from '../design'
import type { FatigueFoil } from '../life'
import type {
  ConductorStrainResult,
  CopperPartResult,
  LeafResult,
  LifeReach,
  MissingInput,
  QuantityRange,
} from '../results'
import { findAxisOffsetRange } from './axis-offset-range'
import {
  type ConductorAllowable,
  findAllowable,
  getFatigueFoil,
  isRolledAnnealed,
  type SurvivalDemand,
  survivalOf,
} from './bend-allowables'
import { type ConductorLife, computeConductorLife, type FlexedLeaf } from './bend-life'
import type { BendSection, ConductorInBend, LeafSection } from './bend-section'
import { readElasticStack } from './elastic-stack'
import { findAllowableRange, findYieldRange, listFoilCorners } from './foil-corner'

export interface ConductorEntry {
  readonly result: ConductorStrainResult
  /** The copper of one material each, in the order in which it lies. */
  readonly parts: readonly PartEntry[]
}

interface PartEntry {
  readonly bendLayerId: string
  readonly isPlating: boolean
  readonly result: ConductorStrainResult
  /** The allowable that a radius may be worked out from; null where nobody can tell one. */
  readonly provenPct: number | null
}

/** How a bend loads its copper: what is made once or a few times and left is formed. */
export function loadingOf({ use, motion }: Bend): Loading {
  return use === 'dynamic' ? motion : 'once'
}

/**
 * Strain, range, allowable and life of every conductor layer of a bend, leaf by leaf. Foil and plating are judged apart; the layer's
 * figures are those of the one that has less to spare.
 *
 * @param missing  receives the inputs that absent allowables lack
 */
export function computeConductors(
  { bend, section, demand }: { bend: Bend; section: BendSection; demand: SurvivalDemand },
  leaves: readonly Leaf[],
  missing: MissingInput[],
): { conductors: ConductorEntry[]; flexed: FlexedLeaf[]; faceFilms: LeafResult['faceFilms'][] } {
  const conductors: ConductorEntry[] = []
  const flexed: FlexedLeaf[] = []
  const faceFilms: LeafResult['faceFilms'][] = []
  const loading = loadingOf(bend)
  for (const leafSection of section.leaves) {
    const { leafIndex, layers } = leafSection
    const leaf = leaves[leafIndex]
    if (leaf === undefined) continue
    // The radius tolerance is the bend's; what lies inside a leaf moves its radius by far less.
    const { conductors: ranges, surfaces } = computeStrainRanges({
      layers,
      insideRadiusMm: leaf.insideRadiusMm,
      radiusMinusMm: bend.radiusToleranceMm,
      radiusPlusMm: bend.radiusToleranceMm,
      loading,
    })
    const elastic = bend.use === 'dynamic' ? readElasticStack(leaf, leafSection) : null
    const foils = new Map<string, FatigueFoil>()
    for (const conductor of section.conductors) {
      if (conductor.leafIndex !== leafIndex) continue
      const copperParts = conductor.plating === null ? [conductor] : [conductor, conductor.plating]
      const parts = copperParts.flatMap((part): PartEntry[] => {
        const strain = leaf.strain.conductors.find(({ id }) => id === part.bendLayerId)
        const range = ranges.find(({ id }) => id === part.bendLayerId)
        if (strain === undefined || range === undefined) return []
        const foil = getFatigueFoil(part)
        foils.set(part.bendLayerId, foil)
        return [describePart({ part, leaf, strain, range, foil, bend, demand, missing })]
      })
      const merged = mergeParts(parts)
      if (merged === null) continue
      const ids = new Set(parts.map(({ bendLayerId }) => bendLayerId))
      const axisOffsetRangeFraction =
        elastic === null
          ? null
          : findAxisOffsetRange(
              elastic,
              layers.findIndex(({ id }) => ids.has(id)),
              layers.findLastIndex(({ id }) => ids.has(id)),
            )
      conductors.push({ ...merged, result: { ...merged.result, axisOffsetRangeFraction } })
    }
    faceFilms.push(listFaceFilms(leafSection, surfaces))
    flexed.push({ section: leaf.section, innerDepthUm: leaf.innerDepthUm, foils })
  }
  return { conductors, flexed, faceFilms }
}

function listFaceFilms(
  { layers, sources }: LeafSection,
  { inner, outer }: { inner: FaceRange; outer: FaceRange },
): LeafResult['faceFilms'] {
  const describe = (side: 'inner' | 'outer', at: number, range: FaceRange): LeafResult['faceFilms'] => {
    const source = sources[at]
    const layer = layers[at]
    const filmYieldStrainPct = layer?.yieldStrainPct
    const spread = layer?.spreads?.find(({ constant }) => constant === 'yieldStrainPct')
    if (source === undefined || filmYieldStrainPct === undefined) return []
    const { nominalPct, minPct, maxPct } = range
    return [
      {
        side,
        layerId: source.layer.id,
        name: source.layer.name,
        strainPct: Math.abs(nominalPct),
        strainRangePct: {
          low: minPct <= 0 && maxPct >= 0 ? 0 : Math.min(Math.abs(minPct), Math.abs(maxPct)),
          high: Math.max(Math.abs(minPct), Math.abs(maxPct)),
        },
        yieldStrainPct: filmYieldStrainPct,
        yieldRangePct: { low: spread?.low ?? filmYieldStrainPct, high: spread?.high ?? filmYieldStrainPct },
      },
    ]
  }
  return [...describe('inner', 0, inner), ...describe('outer', layers.length - 1, outer)]
}

function describePart({
  part,
  leaf,
  strain,
  range,
  foil,
  bend,
  demand,
  missing,
}: {
  part: ConductorInBend
  leaf: Leaf
  strain: ConductorStrain
  range: ConductorStrainRange
  foil: FatigueFoil
  bend: Bend
  demand: SurvivalDemand
  missing: MissingInput[]
}): PartEntry {
  const { layer } = part.copper
  const survival = survivalOf(demand, part)
  const allowable = findAllowable(part, bend, survival, missing)
  const peakRangePct = { low: range.peakBestPct, high: range.peakWorstPct }
  const life =
    bend.use === 'dynamic'
      ? computeConductorLife(
          foil,
          bend,
          survival,
          { nominal: strain.decidingPct, range: peakRangePct },
          listFoilCorners(part),
        )
      : null
  return {
    bendLayerId: part.bendLayerId,
    isPlating: part.bendLayerId !== layer.id,
    provenPct: allowable.provenPct,
    result: {
      layerId: layer.id,
      name: layer.name,
      leafIndex: part.leafIndex,
      innerDepthUm: leaf.innerDepthUm + strain.innerDepthUm,
      outerDepthUm: leaf.innerDepthUm + strain.outerDepthUm,
      innerStrainPct: strain.innerFacePct,
      outerStrainPct: strain.outerFacePct,
      peakStrainPct: strain.decidingPct,
      peakRangePct,
      firstBendStrainPct: strain.peakPct,
      cycleRangePct: strain.rangePct,
      greatestStrainPct: strain.greatestPct,
      governingMaterial: { materialId: part.material.id, name: part.material.name },
      parts: [],
      allowablePct: allowable.allowablePct,
      allowableRangePct: findAllowableRange(part, bend, survival, allowable.allowablePct),
      medianAllowablePct: allowable.medianAllowablePct,
      allowableSourceKey: allowable.sourceKey,
      pastYield: strain.peakPct > part.yieldStrainPct,
      yieldStrainPct: part.yieldStrainPct,
      yieldRangePct: findYieldRange(part),
      axisOffsetRangeFraction: null,
      medianLifeCycles: life?.medianCycles ?? null,
      survivalLifeCycles: life?.survivalCycles ?? null,
      survivalLifeRangeCycles: life?.survivalRangeCycles ?? null,
      isLifeAtCap: life?.isAtCap ?? false,
      lifeReach: life === null ? null : findLifeReach(part, bend, allowable, life),
      ductilityLifeCycles: life === null || isRolledAnnealed(part) ? null : life.ductilityCycles,
      relationEndPct: allowable.relationEndPct,
    },
  }
}

/** Strain figures of the part with least to spare, lives of the part that breaks first, and reach of the one that is known least. */
function mergeParts(parts: readonly PartEntry[]): ConductorEntry | null {
  const [first, ...others] = parts
  if (first === undefined) return null
  if (others.length === 0) return { result: { ...first.result, parts: [describeShare(first)] }, parts }
  const inOrder = parts.toSorted((a, b) => a.result.innerDepthUm - b.result.innerDepthUm)
  const inner = inOrder[0]?.result ?? first.result
  const outer = inOrder.at(-1)?.result ?? first.result
  let weakest = first.result
  let shortest = first.result
  for (const { result } of others) {
    if (isWeaker(result, weakest)) weakest = result
    if (lifeOf(result) < lifeOf(shortest)) shortest = result
  }
  const results = parts.map(({ result }) => result)
  const ductilityLives = results.flatMap(({ ductilityLifeCycles: life }) => (life === null ? [] : [life]))
  return {
    parts,
    result: {
      ...weakest,
      innerDepthUm: inner.innerDepthUm,
      outerDepthUm: outer.outerDepthUm,
      innerStrainPct: inner.innerStrainPct,
      outerStrainPct: outer.outerStrainPct,
      firstBendStrainPct: Math.max(...results.map(({ firstBendStrainPct }) => firstBendStrainPct)),
      cycleRangePct: weakest.cycleRangePct,
      greatestStrainPct: Math.max(...results.map(({ greatestStrainPct }) => greatestStrainPct ?? 0)),
      pastYield: results.some(({ pastYield }) => pastYield),
      medianLifeCycles: shortest.medianLifeCycles,
      survivalLifeCycles: shortest.survivalLifeCycles,
      survivalLifeRangeCycles: findLeastRange(results),
      isLifeAtCap: shortest.isLifeAtCap,
      lifeReach: LEAST_KNOWN_FIRST.find((reach) => results.some(({ lifeReach }) => lifeReach === reach)) ?? null,
      ductilityLifeCycles: ductilityLives.length === 0 ? null : Math.min(...ductilityLives),
      parts: inOrder.map(describeShare),
    },
  }
}

/** Another part than the one that breaks first at nominal may do so at the worst corner. */
function findLeastRange(results: readonly ConductorStrainResult[]): QuantityRange | null {
  const ranges = results.flatMap(({ survivalLifeRangeCycles: range }) => (range === null ? [] : [range]))
  return ranges.length === 0
    ? null
    : { low: Math.min(...ranges.map(({ low }) => low)), high: Math.min(...ranges.map(({ high }) => high)) }
}

/** In dynamic use the copper that breaks first; where no life tells, the copper with least of its allowable to spare. */
function isWeaker(one: ConductorStrainResult, other: ConductorStrainResult): boolean {
  const [life, otherLife] = [lifeOf(one), lifeOf(other)]
  return life === otherLife ? shareOf(one) > shareOf(other) : life < otherLife
}

const lifeOf = ({ survivalLifeCycles }: ConductorStrainResult): number => survivalLifeCycles ?? Number.POSITIVE_INFINITY

const LEAST_KNOWN_FIRST: readonly LifeReach[] = ['beyond', 'strength-governed', 'within']

/** Copper without an allowable has nothing to spare that anybody could tell. */
function shareOf({ peakStrainPct, allowablePct, relationEndPct }: ConductorStrainResult): number {
  const allowed = allowablePct ?? relationEndPct
  return allowed === null ? Number.POSITIVE_INFINITY : peakStrainPct / allowed
}

function describeShare({ isPlating, result }: PartEntry): CopperPartResult {
  return {
    materialId: result.governingMaterial?.materialId ?? '',
    name: result.governingMaterial?.name ?? '',
    isPlating,
    thicknessUm: result.outerDepthUm - result.innerDepthUm,
    peakStrainPct: result.peakStrainPct,
    peakRangePct: result.peakRangePct,
    firstBendStrainPct: result.firstBendStrainPct,
    allowablePct: result.allowablePct,
    allowableRangePct: result.allowableRangePct,
    yieldStrainPct: result.yieldStrainPct,
    yieldRangePct: result.yieldRangePct,
    medianLifeCycles: result.medianLifeCycles,
    survivalLifeCycles: result.survivalLifeCycles,
  }
}

/**
 * Foil that is not rolled-annealed reaches long lives in the relation by its tensile strength alone, which tests do not bear out. So
 * only what its ductility carries is taken as reached.
 */
function findLifeReach(
  conductor: ConductorInBend,
  { requiredCycles }: Bend,
  { relationEndPct }: ConductorAllowable,
  { ductilityCycles }: ConductorLife,
): LifeReach {
  if (relationEndPct !== null) return 'beyond'
  if (isRolledAnnealed(conductor) || requiredCycles === null) return 'within'
  return ductilityCycles >= requiredCycles ? 'within' : 'strength-governed'
}

/** The layer with the largest strain for its allowable; where no layer has one, the largest strain. */
export function findGoverning(conductors: readonly ConductorEntry[]): ConductorStrainResult | null {
  let governing: ConductorStrainResult | null = null
  let greatest = -1
  const hasAllowable = conductors.some(({ result }) => result.allowablePct !== null)
  for (const { result } of conductors) {
    const share = hasAllowable
      ? result.allowablePct === null
        ? -1
        : result.peakStrainPct / result.allowablePct
      : result.peakStrainPct
    if (share > greatest) {
      greatest = share
      governing = result
    }
  }
  return governing
}

/**
 * Radius at which the strain verdict just holds, not below the least at which a strain can be told.
 *
 * @returns null as soon as one layer has no allowable that stands: nobody can say at which radius the bend would hold
 */
export function findMinRadius(
  leaves: readonly Leaf[],
  conductors: readonly ConductorEntry[],
  loading: Loading,
): { readonly radiusMm: number; readonly isFloor: boolean } | null {
  const allowables = new Map<string, number>()
  for (const { bendLayerId, provenPct } of conductors.flatMap(({ parts }) => parts)) {
    if (provenPct === null) return null
    allowables.set(bendLayerId, provenPct)
  }
  let found: { radiusMm: number; isFloor: boolean } | null = null
  for (const leaf of leaves) {
    const radius = computeMinRadiusForStrain(leaf.section, (id) => allowables.get(id) ?? null, loading)
    if (radius === null) continue
    const floorMm = (LEAST_RADIUS_RATIO * leaf.section.totalThicknessUm) / 1000
    const isFloor = radius.minInsideRadiusMm < floorMm
    const radiusMm = Math.max(radius.minInsideRadiusMm, floorMm) - leaf.innerDepthUm / 1000
    if (found === null || radiusMm > found.radiusMm) found = { radiusMm, isFloor }
  }
  return found
}

export interface LeastLife {
  readonly median: number
  readonly survival: number
  readonly range: { readonly low: number; readonly high: number }
  readonly isAtCap: boolean
}

export function findLeastLife(conductors: readonly ConductorEntry[]): LeastLife | null {
  let least: LeastLife | null = null
  for (const { result } of conductors) {
    const { isLifeAtCap } = result
    const { medianLifeCycles: median, survivalLifeCycles: survival, survivalLifeRangeCycles: range } = result
    if (median === null || survival === null || range === null) continue
    least =
      least === null
        ? { median, survival, range, isAtCap: isLifeAtCap }
        : {
            median: Math.min(least.median, median),
            survival: Math.min(least.survival, survival),
            range: { low: Math.min(least.range.low, range.low), high: Math.min(least.range.high, range.high) },
            isAtCap: least.isAtCap && isLifeAtCap,
          }
  }
  return least
}
