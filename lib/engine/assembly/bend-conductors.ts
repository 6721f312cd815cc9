import {
  type ConductorStrain,
  type ConductorStrainRange,
  computeBendStrain,
  computeMinRadiusForStrain,
  type FaceRange,
  type FlatterEnd,
  LEAST_RADIUS_RATIO,
  type Leaf,
  type Loading,
  tighterRadiusMm,
} from '../bending'
import type { Bend } from '../design'
import type { FatigueFoil } from '../life'
import type {
  ConductorStrainResult,
  CopperPartResult,
  FoldBeforeResult,
  LeafResult,
  LifeReach,
  MissingInput,
  ModelLimit,
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
import { findFromRadiusMm, isMoreThanOneState, type StatedStates } from './bend-states'
import { readElasticStack } from './elastic-stack'
import { findAllowableRange, findYieldRange, listFoilCorners } from './foil-corner'
import { computeFoldBefore, leaveLife } from './fold-before'
import { addLoads, computeLeafStates, type LeafStates } from './leaf-states'

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
  { bend, section, demand, states }: { bend: Bend; section: BendSection; demand: SurvivalDemand; states: StatedStates },
  leaves: readonly Leaf[],
  missing: MissingInput[],
): {
  conductors: ConductorEntry[]
  flexed: FlexedLeaf[]
  faceFilms: LeafResult['faceFilms'][]
  /** In the order of the leaves. */
  leafStates: LeafStates[]
  limits: ModelLimit[]
} {
  const conductors: ConductorEntry[] = []
  const flexed: FlexedLeaf[] = []
  const faceFilms: LeafResult['faceFilms'][] = []
  const leafStates: LeafStates[] = []
  const limits: ModelLimit[] = []
  const loading = loadingOf(bend)
  for (const leafSection of section.leaves) {
    const { leafIndex, layers } = leafSection
    const leaf = leaves[leafIndex]
    if (leaf === undefined) continue
    const inLeaf = computeLeafStates(bend, leaf, leafSection, loading, states)
    leafStates.push(inLeaf)
    limits.push(...inLeaf.limits)
    const elastic = bend.use === 'dynamic' ? readElasticStack(leaf, leafSection) : null
    const foils = new Map<string, FatigueFoil>()
    for (const conductor of section.conductors) {
      if (conductor.leafIndex !== leafIndex) continue
      const copperParts = conductor.plating === null ? [conductor] : [conductor, conductor.plating]
      const parts = copperParts.flatMap((part): PartEntry[] => {
        const strains = findStrains(part, leafSection, inLeaf)
        if (strains === null) return []
        const foil = getFatigueFoil(part)
        foils.set(part.bendLayerId, foil)
        return [describePart({ part, leaf, inLeaf, strains, foil, bend, demand, states, missing })]
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
    faceFilms.push(listFaceFilms(leafSection, inLeaf))
    flexed.push({ section: leaf.section, innerDepthUm: leaf.innerDepthUm, foils })
  }
  return { conductors, flexed, faceFilms, leafStates, limits }
}

/** Copper of one material in its leaf, in each of the states. */
interface PartStrains {
  /** Index in the leaf's layers. */
  readonly at: number
  readonly first: ConductorStrain
  readonly firstRange: ConductorStrainRange
  readonly deciding: ConductorStrain
  readonly decidingRange: ConductorStrainRange
  readonly fold: { readonly strain: ConductorStrain; readonly range: ConductorStrainRange } | null
}

function findStrains(
  { bendLayerId }: ConductorInBend,
  { layers }: LeafSection,
  { first, deciding, fold }: LeafStates,
): PartStrains | null {
  const read = ({ strain, ranges }: LeafStates['first']) => {
    const found = strain.conductors.find(({ id }) => id === bendLayerId)
    const range = ranges.find(({ id }) => id === bendLayerId)
    return found === undefined || range === undefined ? null : { strain: found, range }
  }
  const [atFirst, atDeciding] = [read(first), read(deciding)]
  if (atFirst === null || atDeciding === null) return null
  return {
    at: layers.findIndex(({ id }) => id === bendLayerId),
    first: atFirst.strain,
    firstRange: atFirst.range,
    deciding: atDeciding.strain,
    decidingRange: atDeciding.range,
    fold: fold === null ? null : read(fold),
  }
}

/** A film has its strain at the tighter end, mean and range together: that is what yields it. */
function listFaceFilms(
  { layers, sources }: LeafSection,
  { first: { surfaces }, fold, loads }: LeafStates,
): LeafResult['faceFilms'] {
  const describe = (
    side: 'inner' | 'outer',
    at: number,
    range: FaceRange,
    foldRange: FaceRange | null,
  ): LeafResult['faceFilms'] => {
    const source = sources[at]
    const layer = layers[at]
    const filmYieldStrainPct = layer?.yieldStrainPct
    const spread = layer?.spreads?.find(({ constant }) => constant === 'yieldStrainPct')
    if (source === undefined || filmYieldStrainPct === undefined) return []
    const bending = readMagnitudes(range)
    const total = loads === null ? bending : addLoads(bending, loads, loads.pullFirst, { from: at, to: at })
    return [
      {
        side,
        layerId: source.layer.id,
        name: source.layer.name,
        strainPct: total.nominalPct,
        strainRangePct: total.range,
        yieldStrainPct: filmYieldStrainPct,
        yieldRangePct: { low: spread?.low ?? filmYieldStrainPct, high: spread?.high ?? filmYieldStrainPct },
        fold: foldRange === null ? null : toFigure(readMagnitudes(foldRange)),
      },
    ]
  }
  return [
    ...describe('inner', 0, surfaces.inner, fold?.surfaces.inner ?? null),
    ...describe('outer', layers.length - 1, surfaces.outer, fold?.surfaces.outer ?? null),
  ]
}

function readMagnitudes({ nominalPct, minPct, maxPct }: FaceRange): { nominalPct: number; range: QuantityRange } {
  return {
    nominalPct: Math.abs(nominalPct),
    range: {
      low: minPct <= 0 && maxPct >= 0 ? 0 : Math.min(Math.abs(minPct), Math.abs(maxPct)),
      high: Math.max(Math.abs(minPct), Math.abs(maxPct)),
    },
  }
}

const toFigure = ({ nominalPct, range }: { nominalPct: number; range: QuantityRange }) => ({
  strainPct: nominalPct,
  rangePct: range,
})

const toRange = ({ peakBestPct, peakWorstPct }: ConductorStrainRange): QuantityRange => ({
  low: peakBestPct,
  high: peakWorstPct,
})

function describePart({
  part,
  leaf,
  inLeaf,
  strains,
  foil,
  bend,
  demand,
  states,
  missing,
}: {
  part: ConductorInBend
  leaf: Leaf
  inLeaf: LeafStates
  strains: PartStrains
  foil: FatigueFoil
  bend: Bend
  demand: SurvivalDemand
  states: StatedStates
  missing: MissingInput[]
}): PartEntry {
  const { layer } = part.copper
  const survival = survivalOf(demand, part)
  const { first, deciding, at } = strains
  const { loads } = inLeaf
  const bending = { nominalPct: deciding.decidingPct, range: toRange(strains.decidingRange) }
  const bendingFirst = { nominalPct: first.peakPct, range: toRange(strains.firstRange) }
  const place = { from: at, to: at }
  const total = loads === null ? bending : addLoads(bending, loads, loads.pull, place)
  const totalFirst = loads === null ? bendingFirst : addLoads(bendingFirst, loads, loads.pullFirst, place)
  const fold =
    strains.fold === null
      ? null
      : computeFoldBefore(part, bend, survival, {
          nominal: strains.fold.strain.peakPct,
          range: toRange(strains.fold.range),
        })
  const used = fold?.damageFraction ?? null
  const allowable = findAllowable(part, bend, survival, missing, used?.nominal)
  const peakRangePct = total.range
  const life =
    bend.use === 'dynamic'
      ? leaveLife(
          computeConductorLife(
            foil,
            bend,
            survival,
            { nominal: total.nominalPct, range: peakRangePct },
            listFoilCorners(part),
          ),
          used,
        )
      : null
  const firstBendStrainPct = Math.max(totalFirst.nominalPct, fold?.strainPct ?? 0)
  const isOneState = !isMoreThanOneState(states)
  const addedPct = total.nominalPct - bending.nominalPct
  return {
    bendLayerId: part.bendLayerId,
    isPlating: part.bendLayerId !== layer.id,
    provenPct: allowable.provenPct,
    result: {
      layerId: layer.id,
      name: layer.name,
      leafIndex: part.leafIndex,
      innerDepthUm: leaf.innerDepthUm + first.innerDepthUm,
      outerDepthUm: leaf.innerDepthUm + first.outerDepthUm,
      innerStrainPct: first.innerFacePct,
      outerStrainPct: first.outerFacePct,
      peakStrainPct: total.nominalPct,
      peakRangePct,
      firstBendStrainPct,
      cycleRangePct:
        deciding.rangePct === null
          ? null
          : bend.motion === 'reversed'
            ? 2 * total.nominalPct
            : deciding.rangePct + addedPct,
      greatestStrainPct: isOneState
        ? first.greatestPct
        : Math.max(findGreatestPct(bend, first, deciding) + addedPct, firstBendStrainPct),
      governingMaterial: { materialId: part.material.id, name: part.material.name },
      parts: [],
      allowablePct: allowable.allowablePct,
      allowableRangePct: findAllowableRange(part, bend, survival, allowable.allowablePct, used ?? undefined),
      medianAllowablePct: allowable.medianAllowablePct,
      allowableSourceKey: allowable.sourceKey,
      pastYield: firstBendStrainPct > part.yieldStrainPct,
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
      states: isOneState
        ? null
        : {
            bendingPct: bending.nominalPct,
            pullPct: loads?.pull.nominalPct ?? 0,
            twistEdgePct: loads?.twist?.edgePct ?? 0,
            twistShearPct: loads === null ? 0 : addLoads(bending, loads, loads.pull, place).shearPct,
            meanPct: findMeanPct(bend, leaf, strains, states),
            firstBendRangePct: {
              low: Math.min(totalFirst.range.low, firstBendStrainPct),
              high: Math.max(totalFirst.range.high, fold?.strainRangePct.high ?? 0, firstBendStrainPct),
            },
            fold,
          },
    },
  }
}

/** Bound of the strain over the cycles: the factor is that of a cycle from flat, and holds for less of it too. */
function findGreatestPct({ use }: Bend, first: ConductorStrain, deciding: ConductorStrain): number {
  if (use !== 'dynamic') return first.peakPct
  const factor = first.greatestPct / Math.max(first.peakPct, first.decidingPct, Number.MIN_VALUE)
  return factor * Math.max(first.peakPct, deciding.decidingPct)
}

/**
 * Middle of the strains at both ends, each as bent there from flat, at the face that strains more; an earlier fold leaves another mean, which
 * nobody knows.
 */
function findMeanPct(bend: Bend, leaf: Leaf, { first }: PartStrains, states: StatedStates): number | null {
  if (bend.use !== 'dynamic' || states.foldedToRadiusMm !== null || states.limits.length > 0) return null
  if (bend.motion === 'reversed') return 0
  const isInner = Math.abs(first.innerFacePct) > Math.abs(first.outerFacePct)
  const tightPct = isInner ? first.innerFacePct : first.outerFacePct
  const fromMm = findFromRadiusMm(states, leaf.insideRadiusMm, leaf.section.neutralAxisUm)
  if (fromMm === null) return tightPct / 2
  const flatterMm = bend.flexesFromRadiusMm === null ? fromMm : fromMm + leaf.innerDepthUm / 1000
  const { conductors } = computeBendStrain(leaf.section, Math.min(flatterMm, 1e6))
  const atFlatter = conductors.find(({ id }) => id === first.id)
  if (atFlatter === undefined) return null
  return (tightPct + (isInner ? atFlatter.innerFacePct : atFlatter.outerFacePct)) / 2
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
      states: mergeStates(weakest.states, shortest.states, results),
    },
  }
}

/** Of the fold before: the strain of the copper with least to spare in it, and the share of life of the one that breaks first. */
function mergeStates(
  weakest: ConductorStrainResult['states'],
  shortest: ConductorStrainResult['states'],
  results: readonly ConductorStrainResult[],
): ConductorStrainResult['states'] {
  if (weakest === null) return null
  const folds = results.flatMap(({ states }) => states?.fold ?? [])
  const share = ({ strainPct, allowablePct }: FoldBeforeResult): number =>
    allowablePct === null ? Number.POSITIVE_INFINITY : strainPct / allowablePct
  const [worst] = folds.toSorted((a, b) => share(b) - share(a))
  const firstBends = results.flatMap(({ states }) => states?.firstBendRangePct ?? [])
  return {
    ...weakest,
    firstBendRangePct: {
      low: Math.max(...firstBends.map(({ low }) => low)),
      high: Math.max(...firstBends.map(({ high }) => high)),
    },
    fold: worst === undefined ? null : { ...worst, damageFraction: shortest?.fold?.damageFraction ?? null },
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
    firstBendRangePct: result.states?.firstBendRangePct ?? null,
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
 * Radius at which the strain verdict just holds, not below the least at which a strain can be told. Between two ends it is that of the tighter
 * one, the flatter one staying where it is.
 *
 * @returns null as soon as one layer has no allowable that stands: nobody can say at which radius the bend would hold
 */
export function findMinRadius(
  leaves: readonly Leaf[],
  conductors: readonly ConductorEntry[],
  loading: Loading,
  from: FlatterEnd | null = null,
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
    const leastMm =
      from === null
        ? radius.minInsideRadiusMm
        : tighterRadiusMm(radius.minInsideRadiusMm, leaf.section.neutralAxisUm, ofLeaf(from, leaf))
    const floorMm = (LEAST_RADIUS_RATIO * leaf.section.totalThicknessUm) / 1000
    const isFloor = leastMm < floorMm
    const radiusMm = Math.max(leastMm, floorMm) - leaf.innerDepthUm / 1000
    if (found === null || radiusMm > found.radiusMm) found = { radiusMm, isFloor }
  }
  return found
}

const ofLeaf = (from: FlatterEnd, { innerDepthUm }: Leaf): FlatterEnd =>
  'angleShare' in from ? from : { insideRadiusMm: from.insideRadiusMm + innerDepthUm / 1000 }

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
