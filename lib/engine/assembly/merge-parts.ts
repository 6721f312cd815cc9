import type { ConductorStrainResult, CopperPartResult, FoldBeforeResult, LifeReach, QuantityRange } from '../results'
import type { ConductorEntry, PartEntry } from './conductor-entry'

/** Strain figures of the part with least to spare, lives of the part that breaks first, and reach of the one that is known least. */
export function mergeParts(parts: readonly PartEntry[]): ConductorEntry | null {
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
