import { type ConductorStrain, type ConductorStrainRange, computeBendStrain, type Leaf } from '../bending'
import type { Bend } from '../design'
import type { FatigueFoil } from '../life'
import type { LifeReach, MissingInput, QuantityRange } from '../results'
import {
  type ConductorAllowable,
  findAllowable,
  isRolledAnnealed,
  type SurvivalDemand,
  survivalOf,
} from './bend-allowables'
import { type ConductorLife, computeConductorLife } from './bend-life'
import type { ConductorInBend } from './bend-section'
import { findFromRadiusMm, isMoreThanOneState, type StatedStates } from './bend-states'
import type { PartEntry, PartStrains } from './conductor-entry'
import { findAllowableRange, findYieldRange, listFoilCorners } from './foil-corner'
import { computeFoldBefore, leaveLife } from './fold-before'
import { addLoads, type LeafStates } from './leaf-states'

const toRange = ({ peakBestPct, peakWorstPct }: ConductorStrainRange): QuantityRange => ({
  low: peakBestPct,
  high: peakWorstPct,
})

export function describePart({
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
  const isOneState = !isMoreThanOneState(states) && loads === null
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
