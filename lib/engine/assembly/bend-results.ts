import {
  computeLeaves,
  computeMinRadiusForStrain,
  computeSpringback,
  computeStrainRange,
  holdingForceN,
  type Leaf,
  type RatioTable,
  type Springback,
} from '../bending'
import type { Bend } from '../design'
import { EXTRAPOLATION_CYCLES, type FatigueFoil } from '../life'
import type { BendResult, ConductorStrainResult, LeafResult, MissingInput, StrainProfilePoint } from '../results'
import { findAllowable, getFatigueFoil, type SurvivalDemand } from './bend-allowables'
import { explainDisagreement } from './bend-disagreement'
import { computeConductorLife, computeLifeCurve, type FaceInBend } from './bend-life'
import { computeHandbook, computeRatio, type LeafForRules } from './bend-rules'
import type { BendSection } from './bend-section'

export interface BendInputs {
  readonly bend: Bend
  /** Index in the design's list of bends. */
  readonly position: number
  readonly section: BendSection
  readonly demand: SurvivalDemand
  readonly ratioTable: RatioTable
}

/** Everything that is computed for one bend whose section is known. */
export function computeBendResult(inputs: BendInputs): BendResult {
  const { bend, position, section, demand, ratioTable } = inputs
  const missing = listMissing(bend, position)
  const fold = computeLeaves({
    leaves: section.leaves.map((leaf) => leaf.layers),
    gapsUm: section.gapsUm,
    insideRadiusMm: bend.insideRadiusMm,
    angleDeg: bend.angleDeg,
  })
  const forRules: LeafForRules[] = fold.leaves.map((leaf, leafIndex) => ({
    section: leaf.section,
    innerDepthUm: leaf.innerDepthUm,
    conductors: section.conductors.filter((conductor) => conductor.leafIndex === leafIndex),
  }))
  const { conductors, faces, isBeyondRelation } = computeConductors(inputs, fold.leaves, missing)
  if (isBeyondRelation) {
    missing.push({
      path: ['bends', position, 'requiredCycles'],
      label: `required cycles of bend ${bend.name} within reach of the relation (they take a median life beyond 1e12)`,
    })
  }
  const governing = findGoverning(conductors)
  const minRadiusByStrainMm = findMinRadius(fold.leaves, conductors)
  const isDynamic = bend.use === 'dynamic'
  const minRadiusByLifeMm = isDynamic && !isBeyondRelation ? minRadiusByStrainMm : null
  const handbook = computeHandbook(bend, forRules)
  const perLeaf = forRules.reduce((most, { conductors: inLeaf }) => Math.max(most, inLeaf.length), 0)
  const ratio = computeRatio(bend, section, perLeaf, ratioTable)
  const holding = computeHolding(bend, fold.leaves)
  const lengths = fold.leaves.map((leaf) => leaf.developedLengthMm)
  const survivalLife = findLeastLife(conductors)
  return {
    bendId: bend.id,
    name: bend.name,
    zoneId: bend.zoneId,
    use: bend.use,
    sectionThicknessUm: section.thicknessUm,
    leaves: fold.leaves.map(describeLeaf),
    conductors: conductors.map(({ result }) => result),
    strainProfile: listProfile(fold.leaves),
    peakStrainPct: governing?.peakStrainPct ?? null,
    peakRangePct: governing?.peakRangePct ?? null,
    allowablePct: governing?.allowablePct ?? null,
    governingLayerId: governing?.layerId ?? null,
    minRadiusByStrainMm,
    minRadiusByLifeMm,
    handbook,
    ratio,
    disagreement: explainDisagreement({
      bend,
      leaves: forRules,
      governing,
      allowablePct: governing?.allowablePct ?? null,
      minRadiusByStrainMm,
      handbook,
      ratio,
    }),
    lifeCurve: isDynamic && faces.length > 0 ? computeLifeCurve(faces, bend, demand.survival, minRadiusByLifeMm) : [],
    requiredCycles: bend.requiredCycles,
    medianLifeCycles: survivalLife?.median ?? null,
    survivalLifeCycles: survivalLife?.survival ?? null,
    survivalLifeRangeCycles: survivalLife?.range ?? null,
    survivalPct: demand.survivalPct,
    momentNmm: holding.momentNmm,
    holdingForceN: holding.forceN,
    springback: holding.springback,
    developedLengthMm: lengths[0] ?? 0,
    leafLengthDifferenceMm: Math.max(...lengths) - Math.min(...lengths),
    missing,
    cautions: listCautions(inputs, conductors),
  }
}

interface ConductorEntry {
  readonly result: ConductorStrainResult
  readonly lifeRange: { readonly low: number; readonly high: number } | null
}

function listMissing(bend: Bend, position: number): MissingInput[] {
  const missing: MissingInput[] = []
  if (bend.use === null) missing.push({ path: ['bends', position, 'use'], label: `use of bend ${bend.name}` })
  if (bend.use === 'dynamic' && bend.requiredCycles === null) {
    missing.push({ path: ['bends', position, 'requiredCycles'], label: `required cycles of bend ${bend.name}` })
  }
  return missing
}

function computeConductors(
  { bend, section, demand }: BendInputs,
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
function findGoverning(conductors: readonly ConductorEntry[]): ConductorStrainResult | null {
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
function findMinRadius(leaves: readonly Leaf[], conductors: readonly ConductorEntry[]): number | null {
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

function findLeastLife(
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

function describeLeaf(leaf: Leaf, leafIndex: number): LeafResult {
  return {
    leafIndex,
    innerDepthUm: leaf.innerDepthUm,
    thicknessUm: leaf.section.totalThicknessUm,
    neutralAxisDepthUm: leaf.innerDepthUm + leaf.section.neutralAxisUm,
    insideRadiusMm: leaf.insideRadiusMm,
    rigidityNmm2PerMm: leaf.section.rigidityNmm2PerMm,
    developedLengthMm: leaf.developedLengthMm,
  }
}

function listProfile(leaves: readonly Leaf[]): StrainProfilePoint[] {
  const points: StrainProfilePoint[] = []
  leaves.forEach(({ section, innerDepthUm, insideRadiusMm }, leafIndex) => {
    const axisRadiusUm = insideRadiusMm * 1000 + section.neutralAxisUm
    for (const layer of section.layers) {
      for (const depthUm of [layer.innerDepthUm, layer.outerDepthUm]) {
        points.push({
          depthUm: innerDepthUm + depthUm,
          strainPct: (100 * (depthUm - section.neutralAxisUm)) / axisRadiusUm,
          layerId: layer.id,
          leafIndex,
        })
      }
    }
  })
  return points
}

/** Moments add over the leaves; the set that is left is that of the leaf which takes most moment to bend. */
function computeHolding(
  bend: Bend,
  leaves: readonly Leaf[],
): { momentNmm: number; forceN: number | null; springback: BendResult['springback'] } {
  let momentNPerMm = 0
  let stiffest: { springback: Springback; momentNPerMm: number } | null = null
  for (const leaf of leaves) {
    const springback = computeSpringback(leaf.section, leaf.insideRadiusMm, bend.angleDeg)
    const leafMomentNPerMm = springback.formed.momentNPerMmWidth
    momentNPerMm += leafMomentNPerMm
    if (stiffest === null || leafMomentNPerMm > stiffest.momentNPerMm) {
      stiffest = { springback, momentNPerMm: leafMomentNPerMm }
    }
  }
  const momentNmm = momentNPerMm * bend.axisLengthMm
  const { distanceToRigidMm } = bend
  return {
    momentNmm,
    forceN: distanceToRigidMm !== null && distanceToRigidMm > 0 ? holdingForceN(momentNmm, distanceToRigidMm) : null,
    springback:
      stiffest === null
        ? null
        : {
            relaxedRadiusMm: stiffest.springback.relaxedInsideRadiusMm,
            relaxedAngleDeg: stiffest.springback.relaxedAngleDeg,
            keptFraction: stiffest.springback.relaxedAngleDeg / bend.angleDeg,
          },
  }
}

function listCautions({ bend, demand }: BendInputs, conductors: readonly ConductorEntry[]): string[] {
  const cautions: string[] = []
  if (bend.use === 'dynamic' && conductors.length > 0) {
    cautions.push(
      'Fatigue figures are estimates of order of magnitude, with exponents from memory: qualify by test.',
      ...demand.cautions,
    )
    if ((bend.requiredCycles ?? 0) > EXTRAPOLATION_CYCLES) {
      cautions.push('Beyond a million cycles the relation is extrapolated, and must not be used to rank foils.')
    }
  }
  const yielding = conductors.filter(({ result }) => result.pastYield)
  if (yielding.length > 0) {
    cautions.push(
      `${yielding.map(({ result }) => result.name).join(', ')}: past yield. The elastic result stands for strain; the section does not spring back fully.`,
    )
  }
  return cautions
}
