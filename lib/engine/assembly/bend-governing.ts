import {
  computeMinRadiusForStrain,
  type FlatterEnd,
  LEAST_RADIUS_RATIO,
  type Leaf,
  type Loading,
  tighterRadiusMm,
} from '../bending'
import type { ConductorStrainResult } from '../results'
import type { ConductorEntry } from './conductor-entry'

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
