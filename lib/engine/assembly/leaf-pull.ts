import {
  atEnds,
  computeHeldLeaf,
  type Leaf,
  type Loading,
  MOST_PULL_STRAIN_PCT,
  stretchingNPerMm,
  type TolerancedLayer,
} from '../bending'
import type { Bend, Zone } from '../design'
import type { LeafPull, QuantityRange } from '../results'
import type { LeafSection } from './bend-section'

/** What else a leaf passes between the places where it is held: its zone, and the zone's bends, this one among them. */
export interface HeldOver {
  readonly zone: Zone
  readonly bends: readonly Bend[]
}

/**
 * Stretch of the leaf that is too short for its way, where the lengths of the leaves are stated, their zone has a length and none has room to buckle.
 *
 * Model    leaves lie round one centre in each bend and are held at both ends of the zone. What the outermost lacks against the innermost is the
 *          pitch of their axes times the angle, bends to the other side taken off, less the stated steps. The least that the short leaf stretches by
 *          is what is left when its neighbours shorten as much as they are stiff (bars side by side, of unequal length); the most is all of it.
 * @returns null where there is one leaf, or something of the above is not stated
 * Source   SOURCES.exactArithmetic, SOURCES.compositeBeam
 */
export function computeLeafPull(
  bend: Bend,
  leaves: readonly Leaf[],
  sections: readonly LeafSection[],
  lengthRangeMm: QuantityRange,
  loading: Loading,
  { zone, bends }: HeldOver,
): LeafPull | null {
  const [first, last] = [leaves[0], leaves.at(-1)]
  const misfit = findMisfit(bend, leaves, lengthRangeMm, bends)
  if (first === undefined || last === undefined || misfit === null || zone.lengthMm === null) return null
  const isOuterShort = misfit.shortMm >= 0
  const leaf = isOuterShort ? last : first
  const leafIndex = isOuterShort ? leaves.length - 1 : 0
  const layers = sections.find((section) => section.leafIndex === leafIndex)?.layers
  if (layers === undefined) return null
  const allMm = Math.abs(misfit.shortMm)
  const held = {
    insideRadiusMm: leaf.insideRadiusMm,
    // To and fro the leaf is short on one side and long on the other: all of it is taken to come and go.
    loading: loading === 'reversed' ? ('one-way' as const) : loading,
    arcMm: leaf.developedLengthMm,
    lengthMm: Math.max(zone.lengthMm, leaf.developedLengthMm),
  }
  const shared = computeHeldLeaf(layers, { ...held, shortMm: allMm * findSharedFraction(leaves, isOuterShort) })
  return {
    leafIndex,
    heldLengthMm: held.lengthMm,
    shortMm: allMm,
    shortRangeMm: misfit.rangeMm,
    strainPct: shared?.strainPct ?? null,
    straightPct: shared?.straightPct ?? null,
    highPct: findHighPct(layers, held, misfit.rangeMm.high, bend.radiusToleranceMm),
    forceN: shared === null ? null : shared.forceNPerMm * bend.axisLengthMm,
    beyondPct: MOST_PULL_STRAIN_PCT,
  }
}

/** Positive where the outermost leaf is short. */
function findMisfit(
  bend: Bend,
  leaves: readonly Leaf[],
  lengthRangeMm: QuantityRange,
  bends: readonly Bend[],
): { readonly shortMm: number; readonly rangeMm: QuantityRange } | null {
  const [first, last] = [leaves[0], leaves.at(-1)]
  if (leaves.length < 2 || first === undefined || last === undefined) return null
  let turnDeg = 0
  let stepMm = 0
  for (const { leafLengths, leafStepMm, angleDeg, insideFace } of bends) {
    if (leafLengths === null || leafLengths === 'equal-free-to-buckle') return null
    const side = insideFace === bend.insideFace ? 1 : -1
    turnDeg += side * angleDeg
    if (leafLengths === 'equal') continue
    if (leafStepMm === null) return null
    stepMm += side * leafStepMm
  }
  const share = turnDeg / bend.angleDeg
  const neededMm = share * (last.developedLengthMm - first.developedLengthMm)
  const ends = [share * lengthRangeMm.low - stepMm, share * lengthRangeMm.high - stepMm]
  const [low = 0, high = 0] = ends.map(Math.abs).toSorted((a, b) => a - b)
  const doesCross = Math.min(...ends) < 0 && Math.max(...ends) > 0
  return { shortMm: neededMm - stepMm, rangeMm: { low: doesCross ? 0 : low, high } }
}

/** Bars side by side with the same ends: sum(E A (u_i - u)) = 0, u_i in proportion to where the leaf lies. */
function findSharedFraction(leaves: readonly Leaf[], isOuterShort: boolean): number {
  const [first, last] = [leaves[0], leaves.at(-1)]
  const wholeMm = (last?.developedLengthMm ?? 0) - (first?.developedLengthMm ?? 0)
  if (wholeMm <= 0) return 1
  let stiffness = 0
  let moment = 0
  for (const { section, developedLengthMm } of leaves) {
    const own = stretchingNPerMm(section.layers.map(({ layer }) => layer))
    stiffness += own
    moment += (own * (developedLengthMm - (first?.developedLengthMm ?? 0))) / wholeMm
  }
  const common = moment / stiffness
  return isOuterShort ? 1 - common : common
}

/**
 * Nothing gives but the leaf itself, at the tightest radius and the most that it may lack. A stretch that is imposed hardly depends on stiffness:
 * constants are moved to their ends together, thickness stays.
 */
function findHighPct(
  layers: readonly TolerancedLayer[],
  held: Omit<Parameters<typeof computeHeldLeaf>[1], 'shortMm'>,
  shortMm: number,
  radiusToleranceMm: number,
): number | null {
  let highPct = 0
  const ends = (['low', 'high'] as const).map((end) => layers.map((layer) => atEnds(layer, layer.spreads ?? [], end)))
  for (const corner of [layers, ...ends]) {
    const found = computeHeldLeaf(corner, {
      ...held,
      insideRadiusMm: held.insideRadiusMm - radiusToleranceMm,
      shortMm,
    })
    if (found === null) return null
    highPct = Math.max(highPct, found.strainPct)
  }
  return highPct
}
