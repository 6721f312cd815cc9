import {
  accuracyOfMomentPct,
  accuracyOfStrainPct,
  computeFormedState,
  computeSpringback,
  holdingForceN,
  LEAST_RADIUS_RATIO,
  type Leaf,
  NARROW_CONDUCTORS_NOTE,
  type Springback,
} from '../bending'
import { FATIGUE_RELATION_CAUTION, LIFE_CAUTION } from '../cautions'
import { type Bend, callByName } from '../design'
import { EXTRAPOLATION_CYCLES, RANKING_LIMIT_CYCLES, type Survival, survivalOverRelation } from '../life'
import type { BendResult, LeafResult, MissingInput, StrainProfilePoint } from '../results'
import { type SurvivalDemand, survivalOf } from './bend-allowables'
import { computeLoadedLifeCurve } from './bend-at-nominal'
import { computeConductors, loadingOf } from './bend-conductors'
import { explainDisagreement } from './bend-disagreement'
import { findGoverning, findLeastLife, findMinRadius, type LeastLife } from './bend-governing'
import { findHangsOn } from './bend-hangs-on'
import type { BendInputs } from './bend-inputs'
import { findKnownAtLeast } from './bend-known-at-least'
import { computeLifeCurve } from './bend-life'
import { computeShieldShare, findHandbookRange } from './bend-ranges'
import { listFoldCautions, listFoldReachLimits, listRadiusLimits } from './bend-reach'
import { computeHandbook, computeRatio, type LeafForRules } from './bend-rules'
import type { BendSection } from './bend-section'
import { isLoaded, isMoreThanOneState, listTwistReachLimits } from './bend-states'
import { bendLeaves, isFromFlatAlone } from './bent-leaves'
import type { ConductorEntry } from './conductor-entry'
import { describeStates } from './described-states'
import { computeFreeFold } from './free-fold'
import { isAnyLeafPulled } from './leaf-pull'
import type { LeafStates } from './leaf-states'
import { listOwnTestCautions } from './own-test-cautions'
import { applyOwnTests } from './own-tests'
import { listStateCautions } from './state-cautions'

/** Everything that is computed for one bend whose section is known. */
export function computeBendResult(given: BendInputs): BendResult {
  const { bend, position, demand, ratioTable } = given
  const missing = listMissing(bend, position)
  const { fold, states, leafLengthRangeMm, held } = bendLeaves(bend, given.section, given.heldOver)
  const isPulledAtEnds = held.byLeaf.some((pull) => pull !== null)
  const isOneState = isFromFlatAlone({ states, held })
  const isUnderLoad = isLoaded(states) || isAnyLeafPulled(held)
  // Tests are of bends from flat that nothing else loads: they cover no other.
  const { section, uses: ownTests } = applyOwnTests(
    bend,
    given.section,
    isOneState ? given : { ...given, testedLives: [] },
    fold.leaves,
  )
  const inputs = { ...given, section }
  const forRules: LeafForRules[] = fold.leaves.map((leaf, leafIndex) => ({
    section: leaf.section,
    innerDepthUm: leaf.innerDepthUm,
    conductors: section.conductors.filter((conductor) => conductor.leafIndex === leafIndex),
  }))
  const { conductors, flexed, faceFilms, leafStates, limits } = computeConductors(
    { ...inputs, states, heldPulls: held.byLeaf },
    fold.leaves,
    missing,
  )
  const between = computeFreeFold(bend, fold.leaves)
  const governing = findGoverning(conductors)
  // A radius that holds beside a pull or a twist, or in a motion that contradicts itself, is not sought.
  const minRadius =
    isUnderLoad || states.limits.length > 0 || held.limits.length > 0
      ? null
      : findMinRadius(fold.leaves, conductors, loadingOf(bend), states.from)
  const minRadiusByStrainMm = minRadius?.radiusMm ?? null
  const isDynamic = bend.use === 'dynamic'
  const minRadiusByLifeMm = isDynamic ? minRadiusByStrainMm : null
  const handbook = { ...computeHandbook(bend, forRules), minRadiusRangeMm: findHandbookRange(bend, forRules, section) }
  const perLeaf = forRules.reduce((most, { conductors: inLeaf }) => Math.max(most, inLeaf.length), 0)
  const ratio = computeRatio(bend, section, perLeaf, ratioTable)
  const isFull = inputs.detail === 'full'
  const holding = isUnderLoad || states.foldedToRadiusMm !== null ? NOT_HELD : computeHolding(bend, fold.leaves, isFull)
  const lengths = fold.leaves.map((leaf) => leaf.developedLengthMm)
  const survivalLife = findLeastLife(conductors)
  const modelLimits = [
    ...listRadiusLimits(bend, fold.leaves),
    ...listFoldReachLimits(bend, fold.leaves),
    ...section.modelLimits,
    ...states.limits,
    ...listTwistReachLimits(bend, inputs.heldOver.zone),
    ...limits,
    ...held.limits,
    ...between.limits,
  ]
  return {
    bendId: bend.id,
    name: bend.name,
    zoneId: bend.zoneId,
    use: bend.use,
    sectionThicknessUm: section.thicknessUm,
    leaves: fold.leaves.map((leaf, leafIndex) =>
      describeLeaf(bend, leaf, leafIndex, faceFilms[leafIndex] ?? [], leafStates[leafIndex]),
    ),
    conductors: conductors.map(({ result }) => result),
    // Of bending alone: beside a load it would stand against an allowable that it is not for.
    strainProfile: isFull && !isUnderLoad && states.limits.length === 0 ? listProfile(fold.leaves, section) : [],
    peakStrainPct: governing?.peakStrainPct ?? null,
    peakRangePct: governing?.peakRangePct ?? null,
    allowablePct: governing?.allowablePct ?? null,
    allowableRangePct: governing?.allowableRangePct ?? null,
    governingLayerId: governing?.layerId ?? null,
    firstBendStrainPct: governing?.firstBendStrainPct ?? null,
    cycleRangePct: governing?.cycleRangePct ?? null,
    greatestStrainPct: governing?.greatestStrainPct ?? null,
    modelLimits,
    knownAtLeast: modelLimits.length === 0 ? null : findKnownAtLeast({ ...inputs, states }, fold.leaves),
    minRadiusByStrainMm,
    isMinRadiusFloor: minRadius?.isFloor ?? false,
    minRadiusByLifeMm,
    handbook,
    ratio,
    // Moved one at a time, constants are held against one radius from flat alone.
    hangsOn: isFull && isOneState && governing !== null ? findHangsOn(inputs, governing.layerId) : null,
    disagreement:
      isFull && isOneState
        ? explainDisagreement({
            bend,
            leaves: forRules,
            governing,
            allowablePct: governing?.allowablePct ?? null,
            minRadiusByStrainMm,
            handbook,
            ratio,
          })
        : [],
    lifeCurve:
      !isFull || !isDynamic || conductors.length === 0
        ? []
        : isOneState
          ? computeLifeCurve(flexed, bend, findCurveSurvival(inputs), minRadiusByLifeMm)
          : modelLimits.some(({ kind }) => kind !== 'tight-radius')
            ? []
            : computeLoadedLifeCurve(inputs, minRadiusByLifeMm),
    requiredCycles: bend.requiredCycles,
    medianLifeCycles: survivalLife?.median ?? null,
    survivalLifeCycles: survivalLife?.survival ?? null,
    survivalLifeRangeCycles: survivalLife?.range ?? null,
    isLifeAtCap: survivalLife?.isAtCap ?? false,
    survivalPct: demand.survivalPct,
    ownTests,
    momentNmm: holding.momentNmm,
    holdingForceN: holding.forceN,
    springback: holding.springback,
    states: isMoreThanOneState(states) || isPulledAtEnds ? describeStates(bend, states, fold.leaves, leafStates) : null,
    freeFold: between.freeFold,
    leafPull: held.leafPull,
    developedLengthMm: lengths[0] ?? 0,
    leafLengthDifferenceMm: Math.max(...lengths) - Math.min(...lengths),
    leafLengthRangeMm,
    shieldShare: computeShieldShare(fold.leaves, section),
    missing,
    cautions: [
      ...listCautions(inputs, conductors, survivalLife),
      ...listOwnTestCautions(ownTests, demand, bend, survivalLife?.median ?? null),
      ...listFoldCautions(fold.leaves, conductors),
      ...listStateCautions(states, between.freeFold, fold.leaves),
      ...section.cautions,
    ],
  }
}

/** One for the whole curve: that of the conductor with the least life over the relation's, so that it is never too kind. */
function findCurveSurvival({ demand, section }: BendInputs): Survival {
  const [first, ...others] = section.conductors.map((conductor) => survivalOf(demand, conductor))
  return others.reduce(
    (least, each) => (survivalOverRelation(each) < survivalOverRelation(least) ? each : least),
    first ?? demand.survival,
  )
}

function listMissing(bend: Bend, position: number): MissingInput[] {
  const missing: MissingInput[] = []
  if (bend.use === null)
    missing.push({ path: ['bends', position, 'use'], label: `use of ${callByName('bend', bend.name)}` })
  if (bend.use === 'dynamic' && bend.requiredCycles === null) {
    missing.push({
      path: ['bends', position, 'requiredCycles'],
      label: `required cycles of ${callByName('bend', bend.name)}`,
    })
  }
  return missing
}

/** What takes a moment to hold, and springs back, hangs on what the part went through before and on the loads beside it. */
const NOT_HELD: Pick<BendResult, 'momentNmm' | 'springback'> & { readonly forceN: null } = {
  momentNmm: null,
  forceN: null,
  springback: null,
}

function describeLeaf(
  bend: Bend,
  leaf: Leaf,
  leafIndex: number,
  faceFilms: LeafResult['faceFilms'],
  states: LeafStates | undefined,
): LeafResult {
  const radiusRatio = (leaf.insideRadiusMm * 1000) / leaf.section.totalThicknessUm
  const hasGaps = leaf.section.layers.some(({ layer }) => (layer.conductor?.coverageFraction ?? 1) < 1)
  return {
    leafIndex,
    innerDepthUm: leaf.innerDepthUm,
    thicknessUm: leaf.section.totalThicknessUm,
    neutralAxisDepthUm: leaf.innerDepthUm + leaf.section.neutralAxisUm,
    formedAxisDepthUm: leaf.innerDepthUm + leaf.strain.axisUm,
    decidingAxisDepthUm: leaf.innerDepthUm + (states?.deciding.strain ?? leaf.strain).decidingAxisUm,
    radiusRatio,
    accuracyPct: accuracyOfStrainPct(radiusRatio, { loading: loadingOf(bend), hasGaps }),
    momentAccuracyPct: accuracyOfMomentPct(radiusRatio, hasGaps),
    accuracyNote: hasGaps && radiusRatio >= LEAST_RADIUS_RATIO ? NARROW_CONDUCTORS_NOTE : null,
    faceFilms,
    insideRadiusMm: leaf.insideRadiusMm,
    rigidityNmm2PerMm: leaf.section.rigidityNmm2PerMm,
    developedLengthMm: leaf.developedLengthMm,
  }
}

function listProfile(leaves: readonly Leaf[], { conductors }: BendSection): StrainProfilePoint[] {
  const points: StrainProfilePoint[] = []
  const layerIds = new Map(
    conductors.flatMap((each) =>
      each.plating === null ? [] : [[each.plating.bendLayerId, each.bendLayerId] as const],
    ),
  )
  leaves.forEach(({ section, strain, innerDepthUm, insideRadiusMm }, leafIndex) => {
    const axisRadiusUm = insideRadiusMm * 1000 + strain.axisUm
    for (const layer of section.layers) {
      for (const depthUm of [layer.innerDepthUm, layer.outerDepthUm]) {
        points.push({
          depthUm: innerDepthUm + depthUm,
          strainPct: (100 * (depthUm - strain.axisUm)) / axisRadiusUm,
          layerId: layerIds.get(layer.id) ?? layer.id,
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
  withSpringback: boolean,
): { momentNmm: number; forceN: number | null; springback: BendResult['springback'] } {
  let momentNPerMm = 0
  let stiffest: { springback: Springback; momentNPerMm: number } | null = null
  for (const leaf of leaves) {
    if (!withSpringback) {
      momentNPerMm += computeFormedState(leaf.section, leaf.insideRadiusMm).momentNPerMmWidth
      continue
    }
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

function listCautions(
  { bend, demand, section }: BendInputs,
  conductors: readonly ConductorEntry[],
  life: LeastLife | null,
): string[] {
  const cautions: string[] = []
  if (bend.use === 'dynamic' && conductors.length > 0) {
    cautions.push(LIFE_CAUTION, FATIGUE_RELATION_CAUTION, ...listDemandCautions(demand, section))
    cautions.push(...listLongLifeCautions(conductors, life))
  }
  const yielding = conductors.filter(({ result }) => result.pastYield)
  if (yielding.length > 0) {
    cautions.push(
      `${yielding.map(({ result }) => result.name).join(', ')}: past yield. Strain is that of the formed section, whose axis moves as copper yields; it does not spring back fully.`,
    )
  }
  return cautions
}

/** The default slope is not said of a bend whose copper has its slope from tests throughout. */
function listDemandCautions({ cautions, slopeCaution }: SurvivalDemand, { conductors }: BendSection): string[] {
  const isDefaultUsed = conductors.some(({ testedSlope }) => testedSlope === undefined)
  return cautions.filter((caution) => caution !== slopeCaution || isDefaultUsed)
}

/** By the lives that were computed, whatever is asked for: a figure is no surer because less is needed. */
function listLongLifeCautions(conductors: readonly ConductorEntry[], life: LeastLife | null): string[] {
  const cautions: string[] = []
  const longestMedian = Math.max(0, ...conductors.map(({ result }) => result.medianLifeCycles ?? 0))
  if (longestMedian > RANKING_LIMIT_CYCLES) {
    cautions.push(
      'Beyond ten thousand cycles the relation follows tensile strength: it must not be used to rank foils against each other.',
    )
  }
  if (longestMedian > EXTRAPOLATION_CYCLES) cautions.push('Beyond a million cycles the relation is extrapolated.')
  if (life?.isAtCap === true) {
    cautions.push(
      'The life lies past the end of the relation: it is longer than the figure, and nobody can say by how much.',
    )
  }
  const governed = conductors.filter(({ result }) => result.lifeReach === 'strength-governed')
  if (governed.length > 0) {
    cautions.push(
      `${governed.map(({ result }) => result.name).join(', ')}: foil that is not rolled-annealed reaches these cycles by its tensile strength alone. Qualify by test.`,
    )
  }
  return cautions
}
