import {
  atEnds,
  computeHeldLeaf,
  type Leaf,
  type Loading,
  MOST_PULL_STRAIN_PCT,
  stretchingNPerMm,
  type TolerancedLayer,
} from '../bending'
import { BEND_FIELDS, type Bend, callByName, getChoiceWord, ZONE_FIELDS, type Zone } from '../design'
import type { LeafPull, ModelLimit, QuantityRange } from '../results'
import { inSentence } from '../units'
import type { LeafSection } from './bend-section'

/** What else a leaf passes between the places where it is held: its zone, and the zone's bends, this one among them. */
export interface HeldOver {
  readonly zone: Zone
  readonly bends: readonly Bend[]
}

/** Strain that something adds to bending. */
export interface Added {
  readonly nominalPct: number
  readonly range: QuantityRange
}

export const NOTHING_ADDED: Added = { nominalPct: 0, range: { low: 0, high: 0 } }

/** What being too short adds to a leaf's bending: when first bent, and to the strain that decides. */
export interface HeldPull {
  readonly first: Added
  readonly deciding: Added
}

export interface HeldPulls {
  readonly leafPull: LeafPull | null
  /** In the order of the leaves; null for one that is not pulled, whatever the tolerances. */
  readonly byLeaf: readonly (HeldPull | null)[]
  /** Why nobody can tell how far a leaf is pulled. */
  readonly limits: readonly ModelLimit[]
}

const NO_PULLS: HeldPulls = { leafPull: null, byLeaf: [], limits: [] }

/** Whether a leaf of the bend is pulled as its dimensions are, tolerances left aside. */
export const isAnyLeafPulled = ({ byLeaf }: HeldPulls): boolean =>
  byLeaf.some((pull) => pull !== null && (pull.first.nominalPct > 0 || pull.deciding.nominalPct > 0))

/**
 * Stretch of leaves that are too short for their way, where the lengths of the leaves are stated, their zone has a length and none has room to buckle.
 *
 * Model    leaves lie round one centre in each bend and are held at both ends of the zone. What the outermost lacks against the innermost is the
 *          pitch of their axes times the angle, bends to the other side taken off, less the stated steps. The least that the short leaf stretches by
 *          is what is left when its neighbours shorten as much as they are stiff (bars side by side, of unequal length); the most is all of it. A leaf
 *          between the two may lack as much as either at the worst, since its own length is not stated.
 * Source   SOURCES.exactArithmetic, SOURCES.compositeBeam
 */
export function computeHeldPulls(
  bend: Bend,
  leaves: readonly Leaf[],
  sections: readonly LeafSection[],
  lengthRangeMm: QuantityRange,
  loading: Loading,
  heldOver: HeldOver,
): HeldPulls {
  const [first, last] = [leaves[0], leaves.at(-1)]
  if (leaves.length < 2 || first === undefined || last === undefined) return NO_PULLS
  const open = explainOpen(bend, heldOver)
  if (open !== null) return { ...NO_PULLS, limits: open }
  const { zone, bends } = heldOver
  const misfit = findMisfit(bend, first, last, lengthRangeMm, bends)
  if (zone.lengthMm === null) return NO_PULLS
  const zoneLengthMm = zone.lengthMm
  const holdAs = (leaf: Leaf, as: Loading) => ({
    insideRadiusMm: leaf.insideRadiusMm,
    // To and fro the leaf is short on one side and long on the other: all of it is taken to come and go.
    loading: as === 'reversed' ? ('one-way' as const) : as,
    arcMm: leaf.developedLengthMm,
    lengthMm: Math.max(zoneLengthMm, leaf.developedLengthMm),
  })
  const isOuterShort = misfit.shortMm >= 0
  const shortIndex = isOuterShort ? leaves.length - 1 : 0
  const allMm = Math.abs(misfit.shortMm)
  const sharedMm = allMm * findSharedFraction(leaves, isOuterShort)
  let isBeyond = false
  const add = (
    leaf: Leaf,
    layers: readonly TolerancedLayer[],
    as: Loading,
    mostMm: number,
    isShort: boolean,
  ): Added => {
    const held = holdAs(leaf, as)
    const nominal = isShort ? computeHeldLeaf(layers, { ...held, shortMm: sharedMm }) : null
    const highPct = findHighPct(layers, held, mostMm, bend.radiusToleranceMm)
    if ((isShort && nominal === null) || highPct === null) isBeyond = true
    const nominalPct = isShort ? (nominal?.strainPct ?? MOST_PULL_STRAIN_PCT) : 0
    return { nominalPct, range: { low: 0, high: Math.max(nominalPct, highPct ?? MOST_PULL_STRAIN_PCT) } }
  }
  const byLeaf = leaves.map((leaf, leafIndex): HeldPull | null => {
    const layers = sections.find((section) => section.leafIndex === leafIndex)?.layers
    const mostMm = findMostShortMm(misfit, leafIndex, leaves.length)
    if (layers === undefined || mostMm === 0) return null
    // A leaf without copper breaks no conductor, and its films have their own allowance: it is pulled all the same.
    const isShort = leafIndex === shortIndex
    const deciding = add(leaf, layers, loading, mostMm, isShort)
    return { first: loading === 'once' ? deciding : add(leaf, layers, 'once', mostMm, isShort), deciding }
  })
  return {
    leafPull: describePull(bend, leaves, sections, {
      leafIndex: shortIndex,
      allMm,
      sharedMm,
      rangeMm: misfit.rangeMm,
      mostMm: findMostShortMm(misfit, shortIndex, leaves.length),
      hold: (leaf) => holdAs(leaf, loading),
    }),
    byLeaf,
    limits: isBeyond
      ? [
          {
            kind: 'leaves',
            because: `a leaf that is too short may stretch by more than ${inSentence(MOST_PULL_STRAIN_PCT, 'pct')}, where no strain is known to be right`,
            decidedBy: 'step the leaves, give the inner ones room to buckle, or test it',
          },
        ]
      : [],
  }
}

/** What is not stated, of this bend or of another one that the leaves pass on their way; null where all of it is, empty where no leaf is pulled. */
function explainOpen({ name, use }: Bend, { zone, bends }: HeldOver): readonly ModelLimit[] | null {
  const openLimit = (because: string, decidedBy: string): readonly ModelLimit[] => [
    { kind: 'leaves', because, decidedBy },
  ]
  for (const each of bends) {
    if (each.leafLengths === null) {
      return openLimit(
        `its leaves are not bonded and nobody has stated how long they are in ${callByName('bend', each.name)}, so that a short one may be pulled`,
        `state "${BEND_FIELDS.leafLengths.label}" of ${callByName('bend', each.name)}`,
      )
    }
    if (each.leafLengths !== 'stepped' && (each.leafStepMm ?? 0) > 0) {
      return openLimit(
        `its leaves are stated as ${getChoiceWord(BEND_FIELDS.leafLengths, each.leafLengths)} in ${callByName('bend', each.name)}, and a step of ${inSentence(each.leafStepMm ?? 0, 'mm')} is stated too`,
        `state "${BEND_FIELDS.leafLengths.label}" as stepped, or leave "${BEND_FIELDS.leafStepMm.label}" blank`,
      )
    }
    if (each.leafLengths === 'stepped' && each.leafStepMm === null) {
      return openLimit(
        `its leaves are stepped and nobody has stated by how much in ${callByName('bend', each.name)}, so that a short one may be pulled`,
        `state "${BEND_FIELDS.leafStepMm.label}" of ${callByName('bend', each.name)}`,
      )
    }
  }
  if (bends.some(({ leafLengths }) => leafLengths === 'equal-free-to-buckle')) {
    return use === 'dynamic'
      ? openLimit(
          `the leaves of ${callByName('bend', name)} buckle, and a leaf that buckles in motion pulls and lets go in a way that is not computed`,
          'step the leaves, or test them',
        )
      : []
  }
  return zone.lengthMm === null
    ? openLimit(
        `the length over which its leaves are held in ${zone.name} is not stated, so that nobody knows how far a short one stretches`,
        `state "${ZONE_FIELDS.lengthMm.label}" of ${zone.name}`,
      )
    : null
}

interface Misfit {
  /** Positive where the outermost leaf is short. */
  readonly shortMm: number
  /** Of its magnitude. */
  readonly rangeMm: QuantityRange
  /** The most by which the outermost, or the innermost, leaf may be short. */
  readonly outerMostMm: number
  readonly innerMostMm: number
}

function findMostShortMm({ outerMostMm, innerMostMm }: Misfit, leafIndex: number, leafCount: number): number {
  if (leafIndex === 0) return innerMostMm
  return leafIndex === leafCount - 1 ? outerMostMm : Math.max(outerMostMm, innerMostMm)
}

/** The short leaf as the results show it, at the loading that decides. */
function describePull(
  bend: Bend,
  leaves: readonly Leaf[],
  sections: readonly LeafSection[],
  {
    leafIndex,
    allMm,
    sharedMm,
    rangeMm,
    mostMm,
    hold,
  }: {
    leafIndex: number
    allMm: number
    sharedMm: number
    rangeMm: QuantityRange
    mostMm: number
    hold: (leaf: Leaf) => Omit<Parameters<typeof computeHeldLeaf>[1], 'shortMm'>
  },
): LeafPull | null {
  const leaf = leaves[leafIndex]
  const layers = sections.find((section) => section.leafIndex === leafIndex)?.layers
  if (leaf === undefined || layers === undefined) return null
  const held = hold(leaf)
  const shared = computeHeldLeaf(layers, { ...held, shortMm: sharedMm })
  return {
    leafIndex,
    heldLengthMm: held.lengthMm,
    shortMm: allMm,
    shortRangeMm: rangeMm,
    strainPct: shared?.strainPct ?? null,
    straightPct: shared?.straightPct ?? null,
    highPct: findHighPct(layers, held, mostMm, bend.radiusToleranceMm),
    forceN: shared === null ? null : shared.forceNPerMm * bend.axisLengthMm,
    beyondPct: MOST_PULL_STRAIN_PCT,
  }
}

/** By lengths that are all stated. */
function findMisfit(bend: Bend, first: Leaf, last: Leaf, lengthRangeMm: QuantityRange, bends: readonly Bend[]): Misfit {
  let turnDeg = 0
  let stepMm = 0
  for (const { leafLengths, leafStepMm, angleDeg, insideFace } of bends) {
    const side = insideFace === bend.insideFace ? 1 : -1
    turnDeg += side * angleDeg
    if (leafLengths === 'stepped') stepMm += side * (leafStepMm ?? 0)
  }
  const share = turnDeg / bend.angleDeg
  const neededMm = share * (last.developedLengthMm - first.developedLengthMm)
  const ends = [neededMm - stepMm, share * lengthRangeMm.low - stepMm, share * lengthRangeMm.high - stepMm]
  const [least, most] = [Math.min(...ends), Math.max(...ends)]
  return {
    shortMm: neededMm - stepMm,
    rangeMm: {
      low: least < 0 && most > 0 ? 0 : Math.min(Math.abs(least), Math.abs(most)),
      high: Math.max(Math.abs(least), Math.abs(most)),
    },
    outerMostMm: Math.max(0, most),
    innerMostMm: Math.max(0, -least),
  }
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
  const hasSpreads = layers.some(({ spreads = [] }) => spreads.length > 0)
  const ends = (hasSpreads ? (['low', 'high'] as const) : []).map((end) =>
    layers.map((layer) => atEnds(layer, layer.spreads ?? [], end)),
  )
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
