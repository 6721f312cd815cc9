import { computeMinRadiusForStrain, computeStrainRange, type Leaf } from '../bending'
import type { Bend } from '../design'
import type { FatigueFoil } from '../life'
import type { ConductorStrainResult, LifeReach, MissingInput } from '../results'
import {
  type ConductorAllowable,
  findAllowable,
  getFatigueFoil,
  isRolledAnnealed,
  type SurvivalDemand,
} from './bend-allowables'
import { type ConductorLife, computeConductorLife, type FaceInBend } from './bend-life'
import { findAxisOffsetRange } from './bend-ranges'
import type { BendSection, ConductorInBend } from './bend-section'

export interface ConductorEntry {
  readonly result: ConductorStrainResult
  /** The allowable that a radius may be worked out from; null where nobody can tell one. */
  readonly provenPct: number | null
}

/**
 * Strain, range, allowable and life of every conductor layer of a bend, leaf by leaf.
 *
 * @param missing  receives the inputs that absent allowables lack
 */
export function computeConductors(
  { bend, section, demand }: { bend: Bend; section: BendSection; demand: SurvivalDemand },
  leaves: readonly Leaf[],
  missing: MissingInput[],
): { conductors: ConductorEntry[]; faces: FaceInBend[] } {
  const conductors: ConductorEntry[] = []
  const faces: FaceInBend[] = []
  const foils = new Map<string, FatigueFoil>()
  for (const leafSection of section.leaves) {
    const { leafIndex, layers } = leafSection
    const leaf = leaves[leafIndex]
    if (leaf === undefined) continue
    // The radius tolerance is the bend's; what lies inside a leaf moves its radius by far less.
    const ranges = computeStrainRange({
      layers,
      insideRadiusMm: leaf.insideRadiusMm,
      radiusMinusMm: bend.radiusToleranceMm,
      radiusPlusMm: bend.radiusToleranceMm,
    })
    for (const conductor of section.conductors) {
      if (conductor.leafIndex !== leafIndex) continue
      const { layer } = conductor.copper
      const strain = leaf.strain.conductors.find(({ id }) => id === layer.id)
      const range = ranges.find(({ id }) => id === layer.id)
      if (strain === undefined || range === undefined) continue
      const foil = foils.get(conductor.material.id) ?? getFatigueFoil(conductor)
      foils.set(conductor.material.id, foil)
      const allowable = findAllowable(conductor, bend, demand.survival, missing)
      const peakRangePct = { low: range.peakBestPct, high: range.peakWorstPct }
      const life =
        bend.use === 'dynamic'
          ? computeConductorLife(foil, bend, demand.survival, { nominal: strain.peakPct, range: peakRangePct })
          : null
      const axisUm = leaf.section.neutralAxisUm
      faces.push({
        foil,
        armUm: Math.max(Math.abs(strain.innerDepthUm - axisUm), Math.abs(strain.outerDepthUm - axisUm)),
        axisDepthUm: leaf.innerDepthUm + axisUm,
      })
      conductors.push({
        provenPct: allowable.provenPct,
        result: {
          layerId: layer.id,
          name: layer.name,
          leafIndex,
          innerDepthUm: leaf.innerDepthUm + strain.innerDepthUm,
          outerDepthUm: leaf.innerDepthUm + strain.outerDepthUm,
          innerStrainPct: strain.innerFacePct,
          outerStrainPct: strain.outerFacePct,
          peakStrainPct: strain.peakPct,
          peakRangePct,
          allowablePct: allowable.allowablePct,
          medianAllowablePct: allowable.medianAllowablePct,
          allowableSourceKey: allowable.sourceKey,
          pastYield: strain.peakPct > conductor.yieldStrainPct,
          yieldStrainPct: conductor.yieldStrainPct,
          axisOffsetRangeFraction: bend.use === 'dynamic' ? findAxisOffsetRange(leaf, leafSection, layer.id) : null,
          medianLifeCycles: life?.medianCycles ?? null,
          survivalLifeCycles: life?.survivalCycles ?? null,
          survivalLifeRangeCycles: life?.survivalRangeCycles ?? null,
          isLifeAtCap: life?.isAtCap ?? false,
          lifeReach: life === null ? null : findLifeReach(conductor, bend, allowable, life),
          ductilityLifeCycles: life === null || isRolledAnnealed(conductor) ? null : life.ductilityCycles,
          relationEndPct: allowable.relationEndPct,
        },
      })
    }
  }
  return { conductors, faces }
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

/** Null as soon as one layer has no allowable that stands: nobody can say at which radius the bend would hold. */
export function findMinRadius(leaves: readonly Leaf[], conductors: readonly ConductorEntry[]): number | null {
  const allowables = new Map<string, number>()
  for (const { result, provenPct } of conductors) {
    if (provenPct === null) return null
    allowables.set(result.layerId, provenPct)
  }
  let minRadiusMm: number | null = null
  for (const leaf of leaves) {
    const radius = computeMinRadiusForStrain(leaf.section, (id) => allowables.get(id) ?? null)
    if (radius === null) continue
    minRadiusMm = Math.max(minRadiusMm ?? 0, radius.minInsideRadiusMm - leaf.innerDepthUm / 1000)
  }
  return minRadiusMm
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
