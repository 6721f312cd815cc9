import {
  atEnds,
  type BendStrain,
  boundPullStrainPct,
  type ConductorStrainRange,
  computeBendStrain,
  computePullStrainPct,
  computeStrainRanges,
  computeStripTwist,
  equivalentRadiusMm,
  equivalentStrainPct,
  explainOutsideTwist,
  type FaceRange,
  type FlatterEnd,
  LEAST_RADIUS_RATIO,
  type Leaf,
  type Loading,
  MOST_EDGE_STRAIN_RATIO,
  MOST_PULL_STRAIN_PCT,
  mostTwistRatePerMm,
  type TolerancedLayer,
  twistShearPct,
} from '../bending'
import type { Bend } from '../design'
import type { ModelLimit, QuantityRange } from '../results'
import { inSentence } from '../units'
import type { LeafSection } from './bend-section'
import { isLoaded, type StatedStates } from './bend-states'
import { type Added, type HeldPull, NOTHING_ADDED } from './leaf-pull'

/** A kilometre: as flat as makes no difference. */
const FLAT_RADIUS_MM = 1e6

/** Strain of a section at one radius, with its ranges. */
interface Bent {
  readonly strain: BendStrain
  readonly ranges: readonly ConductorStrainRange[]
  readonly surfaces: { readonly inner: FaceRange; readonly outer: FaceRange }
}

/** What one leaf of a bend goes through. */
export interface LeafStates {
  /** What decides: of a cycle between the two ends, or of the bend itself. */
  readonly deciding: Bent
  /** The bend at its radius; the same as `deciding` where it flexes from flat. */
  readonly first: Bent
  /** Inside radius that gives the same range from flat; null where it flexes from flat. */
  readonly equivalentRadiusMm: number | null
  readonly fold: Bent | null
  readonly loads: LeafLoads | null
  /** Loads that are beyond their models. */
  readonly limits: readonly ModelLimit[]
}

/** What loads a leaf beside bending. */
export interface LeafLoads {
  /** Strain that the pull adds when first bent, and to the strain that decides. */
  readonly pullFirst: Added
  readonly pull: Added
  readonly twist: {
    readonly ratePerMm: number
    readonly edgePct: number
    readonly shearAxisUm: number
    readonly torqueNmm: number
  } | null
  readonly layers: readonly TolerancedLayer[]
}

export function computeLeafStates(
  bend: Bend,
  leaf: Leaf,
  { layers }: LeafSection,
  loading: Loading,
  states: StatedStates,
  held: HeldPull | null = null,
): LeafStates {
  const tolerance = bend.radiusToleranceMm
  // The radius tolerance is the bend's; what lies inside a leaf moves its radius by far less.
  const first: Bent = {
    strain: leaf.strain,
    ...atRadius(
      layers,
      { low: leaf.insideRadiusMm - tolerance, nominal: leaf.insideRadiusMm, high: leaf.insideRadiusMm + tolerance },
      loading,
    ),
  }
  const { loads, limits } = computeLoads(bend, leaf, layers, loading, states, held)
  const radii = states.from === null ? null : findEquivalentRadii(leaf, states.from, tolerance)
  return {
    first,
    deciding:
      radii === null
        ? first
        : { strain: computeBendStrain(leaf.section, radii.nominal, loading), ...atRadius(layers, radii, loading) },
    equivalentRadiusMm: radii?.nominal ?? null,
    fold: computeFold(leaf, layers, states.foldedToRadiusMm, tolerance),
    loads,
    limits,
  }
}

interface Radii {
  readonly low: number
  readonly nominal: number
  readonly high: number
}

function atRadius(layers: readonly TolerancedLayer[], { low, nominal, high }: Radii, loading: Loading) {
  const { conductors, surfaces } = computeStrainRanges({
    layers,
    insideRadiusMm: nominal,
    radiusMinusMm: nominal - low,
    radiusPlusMm: high - nominal,
    loading,
  })
  return { ranges: conductors, surfaces }
}

/**
 * Both ends may be off by the tolerance, and the depth that keeps its length lies anywhere in the leaf, since copper past yield moves it:
 * the least and the greatest of all that.
 */
function findEquivalentRadii(
  { insideRadiusMm, innerDepthUm, section }: Leaf,
  from: FlatterEnd,
  tolerance: number,
): Radii {
  const ofLeaf = (moved: number): FlatterEnd =>
    'angleShare' in from ? from : { insideRadiusMm: from.insideRadiusMm + innerDepthUm / 1000 + moved }
  const at = (radiusMm: number, axisUm: number, end: FlatterEnd) =>
    equivalentRadiusMm(radiusMm, axisUm, end) ?? FLAT_RADIUS_MM
  return {
    low: at(insideRadiusMm - tolerance, 0, ofLeaf(tolerance)),
    nominal: at(insideRadiusMm, section.neutralAxisUm, ofLeaf(0)),
    high: at(insideRadiusMm + tolerance, section.totalThicknessUm, ofLeaf(-tolerance)),
  }
}

function computeFold(
  { innerDepthUm, section }: Leaf,
  layers: readonly TolerancedLayer[],
  foldedToRadiusMm: number | null,
  tolerance: number,
): Bent | null {
  if (foldedToRadiusMm === null) return null
  // A fold that is too tight for its strain to be told strains at least as much as the tightest that can be.
  const leastMm = (LEAST_RADIUS_RATIO * section.totalThicknessUm) / 1000
  const nominal = Math.max(foldedToRadiusMm + innerDepthUm / 1000, leastMm)
  return {
    strain: computeBendStrain(section, nominal),
    ...atRadius(layers, { low: Math.max(0, nominal - tolerance), nominal, high: nominal + tolerance }, 'once'),
  }
}

function computeLoads(
  bend: Bend,
  leaf: Leaf,
  layers: readonly TolerancedLayer[],
  loading: Loading,
  states: StatedStates,
  held: HeldPull | null,
): { loads: LeafLoads | null; limits: readonly ModelLimit[] } {
  if (!isLoaded(states)) {
    return held === null
      ? { loads: null, limits: [] }
      : { loads: { pullFirst: held.first, pull: held.deciding, twist: null, layers }, limits: [] }
  }
  const limits: ModelLimit[] = []
  const pullNPerMm = states.pullN / bend.axisLengthMm
  const pullFirst = computePull(bend, leaf, layers, 'once', pullNPerMm)
  const pull = computePull(bend, leaf, layers, loading, pullNPerMm)
  if (pullFirst.isBeyond || pull.isBeyond) {
    limits.push({
      kind: 'loads',
      because: `the pull stretches it by more than ${inSentence(MOST_PULL_STRAIN_PCT, 'pct')} beside its bending, where no strain is known to be right`,
      decidedBy: 'take the pull off the bend, or test it',
    })
  }
  if (held !== null && states.pullN > 0) {
    limits.push({
      kind: 'loads',
      because:
        'its leaves are pulled by a load and by being of unequal length at once, and how copper past yield bears both is not computed',
      decidedBy: 'take the pull off the bend, give the leaves room, or test it',
    })
  }
  const { twist, limit } = computeTwist(bend, leaf, layers, states.twistRatePerMm)
  if (limit !== null) limits.push(limit)
  return {
    loads: {
      pullFirst: addUp(pullFirst, held?.first ?? NOTHING_ADDED),
      pull: addUp(pull, held?.deciding ?? NOTHING_ADDED),
      twist,
      layers,
    },
    limits,
  }
}

const addUp = (one: Added, other: Added): Added => ({
  nominalPct: one.nominalPct + other.nominalPct,
  range: { low: one.range.low + other.range.low, high: one.range.high + other.range.high },
})

/** Beyond the model the twist is taken at the model's end: it strains at least that much. */
function computeTwist(
  { axisLengthMm: widthMm }: Bend,
  { section }: Leaf,
  layers: readonly TolerancedLayer[],
  statedRatePerMm: number,
): { twist: LeafLoads['twist']; limit: ModelLimit | null } {
  if (statedRatePerMm === 0) return { twist: null, limit: null }
  const strip = { thicknessUm: section.totalThicknessUm, widthMm }
  const because = explainOutsideTwist({ ...strip, twistRatePerMm: statedRatePerMm })
  const limit: ModelLimit | null =
    because === null ? null : { kind: 'loads', because, decidedBy: 'twist it less over more length, or test it' }
  const twistRatePerMm = Math.min(statedRatePerMm, mostTwistRatePerMm(widthMm))
  if (explainOutsideTwist({ ...strip, twistRatePerMm }) !== null) return { twist: null, limit }
  const { edgeStrainPct, shearAxisUm, torqueNmm } = computeStripTwist(layers, { twistRatePerMm, widthMm })
  return { twist: { ratePerMm: twistRatePerMm, edgePct: edgeStrainPct, shearAxisUm, torqueNmm }, limit }
}

/**
 * Strain of the pull over tolerances and constants. Any one leaf of several may have to carry all of it: their lengths are never quite equal.
 * Past MOST_PULL_STRAIN_PCT that strain stands for more.
 */
function computePull(
  { radiusToleranceMm }: Bend,
  { insideRadiusMm }: Leaf,
  layers: readonly TolerancedLayer[],
  loading: Loading,
  pullNPerMm: number,
): Added & { readonly isBeyond: boolean } {
  const nominalPct = computePullStrainPct(layers, { insideRadiusMm, loading, pullNPerMm })
  const high = boundPullStrainPct(layers, { insideRadiusMm, radiusToleranceMm, loading, pullNPerMm })
  // At the least all of it is elastic, as stiff and as thick as may be.
  const stiffest = layers.map((layer) => ({
    ...atEnds(layer, layer.spreads ?? [], 'high'),
    thicknessUm: layer.thicknessUm + layer.plusUm,
  }))
  const low = computePullStrainPct(stiffest, { insideRadiusMm: FLAT_RADIUS_MM, loading, pullNPerMm })
  const nominal = nominalPct ?? MOST_PULL_STRAIN_PCT
  return {
    nominalPct: nominal,
    range: { low: Math.min(low ?? nominal, nominal), high: Math.max(high ?? MOST_PULL_STRAIN_PCT, nominal) },
    isBeyond: nominalPct === null || high === null,
  }
}

/** What a strain of bending becomes with the loads: the strains along the part add up, whichever face they belong to. */
export function addLoads(
  bending: { readonly nominalPct: number; readonly range: QuantityRange },
  loads: LeafLoads,
  pull: Added,
  place: { readonly from: number; readonly to: number },
): { readonly nominalPct: number; readonly range: QuantityRange; readonly edgePct: number; readonly shearPct: number } {
  const shear = findShear(loads, place)
  const edgePct = loads.twist?.edgePct ?? 0
  const total = (bendingPct: number, pullPct: number, twistPct: number, shearPct: number) =>
    equivalentStrainPct(bendingPct + pullPct + twistPct, shearPct)
  return {
    nominalPct: total(bending.nominalPct, pull.nominalPct, edgePct, shear.nominalPct),
    range: {
      // Nobody knows how the parts of the load go together: at the best they do not meet at all.
      low: bending.range.low,
      high: total(bending.range.high, pull.range.high, MOST_EDGE_STRAIN_RATIO * edgePct, shear.worstPct),
    },
    edgePct,
    shearPct: shear.nominalPct,
  }
}

/**
 * Shear in a run of layers. The depth without shear moves with yield: at the worst it lies at the far face.
 *
 * @param place  indices of the first and the last layer
 */
function findShear({ twist, layers }: LeafLoads, { from, to }: { from: number; to: number }) {
  if (twist === null) return { nominalPct: 0, worstPct: 0 }
  let depthUm = 0
  let innerUm = 0
  let outerUm = 0
  let outerMostUm = 0
  let plusUm = 0
  let plusInsideUm = 0
  layers.forEach((layer, at) => {
    if (at === from) {
      innerUm = depthUm
      plusInsideUm = plusUm
    }
    depthUm += layer.thicknessUm
    plusUm += layer.plusUm
    if (at === to) {
      outerUm = depthUm
      outerMostUm = depthUm + plusUm
    }
  })
  const armUm = Math.max(Math.abs(innerUm - twist.shearAxisUm), Math.abs(outerUm - twist.shearAxisUm))
  const mostUm = Math.max(outerMostUm, depthUm - innerUm + plusUm - plusInsideUm)
  return {
    nominalPct: twistShearPct(twist.ratePerMm, armUm),
    worstPct: twistShearPct(twist.ratePerMm, mostUm),
  }
}
