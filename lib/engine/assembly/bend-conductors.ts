import { computeMinRadiusForStrain, computeStrainRange, type Leaf } from '../bending'
import type { Bend } from '../design'
import type { FatigueFoil } from '../life'
import type { ConductorStrainResult, MissingInput } from '../results'
import { findAllowable, getFatigueFoil, type SurvivalDemand } from './bend-allowables'
import { computeConductorLife, type FaceInBend } from './bend-life'
import type { BendSection } from './bend-section'

export interface ConductorEntry {
  readonly result: ConductorStrainResult
  readonly lifeRange: { readonly low: number; readonly high: number } | null
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
): { conductors: ConductorEntry[]; faces: FaceInBend[]; isBeyondRelation: boolean } {
  const conductors: ConductorEntry[] = []
  const faces: FaceInBend[] = []
  const foils = new Map<string, FatigueFoil>()
  let isBeyondRelation = false
  for (const { leafIndex, layers } of section.leaves) {
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
      isBeyondRelation ||= allowable.isBeyondRelation
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
        lifeRange: life?.survivalRangeCycles ?? null,
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
          medianLifeCycles: life?.medianCycles ?? null,
          survivalLifeCycles: life?.survivalCycles ?? null,
        },
      })
    }
  }
  return { conductors, faces, isBeyondRelation }
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

/** Null as soon as one layer has no allowable: nobody can say at which radius the bend would hold. */
export function findMinRadius(leaves: readonly Leaf[], conductors: readonly ConductorEntry[]): number | null {
  const allowables = new Map<string, number>()
  for (const { result } of conductors) {
    if (result.allowablePct === null) return null
    allowables.set(result.layerId, result.allowablePct)
  }
  let minRadiusMm: number | null = null
  for (const leaf of leaves) {
    const radius = computeMinRadiusForStrain(leaf.section, (id) => allowables.get(id) ?? null)
    if (radius === null) continue
    minRadiusMm = Math.max(minRadiusMm ?? 0, radius.minInsideRadiusMm - leaf.innerDepthUm / 1000)
  }
  return minRadiusMm
}

export function findLeastLife(
  conductors: readonly ConductorEntry[],
): { median: number; survival: number; range: { low: number; high: number } } | null {
  let least: { median: number; survival: number; range: { low: number; high: number } } | null = null
  for (const { result, lifeRange } of conductors) {
    const { medianLifeCycles: median, survivalLifeCycles: survival } = result
    if (median === null || survival === null || lifeRange === null) continue
    least =
      least === null
        ? { median, survival, range: lifeRange }
        : {
            median: Math.min(least.median, median),
            survival: Math.min(least.survival, survival),
            range: { low: Math.min(least.range.low, lifeRange.low), high: Math.min(least.range.high, lifeRange.high) },
          }
  }
  return least
}
