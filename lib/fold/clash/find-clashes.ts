import type { FlatBody } from '../bodies/flat-bodies'
import { boxGapMm, flatBoxOf, type PlacedBody, type PlacedPrism } from '../bodies/place-bodies'
import type { Vector } from '../kinematics/vector'
import { measureGap } from './convex-gap'

/** Two bodies nearer to each other than they may be, or not certainly far enough. */
export interface Clash extends Gapped {
  /** "touches" where they meet, "near" where the gap is certainly too small, "cannot-tell" where the bounds hold the limit. */
  readonly kind: 'touches' | 'near' | 'cannot-tell'
  readonly allowedMm: number
}

export interface Clearance {
  readonly clashes: readonly Clash[]
  /** Least gap between bodies that are far from each other along the part; null where there are none. */
  readonly least: Gapped | null
}

interface Bounds {
  readonly lowerMm: number
  readonly upperMm: number
  readonly at: Vector
}

export interface Gapped extends Bounds {
  readonly bodyIds: readonly [string, string]
}

/** Chord over arc of half a turn: no bend of up to 180 degrees brings two of its points nearer than this share of their way. */
const HALF_TURN_SHARE = 2 / Math.PI
/** Rounding of the arithmetic, and of outlines that were cut into lines. */
const ROUNDING_SHARE = 0.95

/**
 * What two pieces must keep between them: the clearance, but for pieces that lie near each other along the part itself. There the bend's own
 * radius says how near they come, and the clearance would forbid each tight bend. Common practice, no published source.
 */
export function allowGapMm(clearanceMm: number, flatGapMm: number, heightsMm: number): number {
  return Math.max(0, Math.min(clearanceMm, ROUNDING_SHARE * (HALF_TURN_SHARE * flatGapMm - heightsMm / 2)))
}

/** What a pair of bodies owes to the bends that join it. */
export interface JoinedPairs {
  /** Whether one bend joins them: what its own radius keeps apart is no least gap of the part. */
  readonly isJoined: (first: FlatBody, second: FlatBody) => boolean
  /** The gap that their bend makes by its own radius where it turns the leaves towards each other; null where none does. */
  readonly ownGapMm: (first: FlatBody, second: FlatBody) => number | null
}

/**
 * All pairs of bodies that come nearer to each other than `clearanceMm`, at one state of the fold. Bodies on one plate never move
 * against each other and are not compared.
 */
export function findClashes(bodies: readonly PlacedBody[], clearanceMm: number, joined: JoinedPairs): Clearance {
  const clashes: Clash[] = []
  let least: Gapped | null = null
  for (const { first, second, boxMm } of pairsByBox(bodies)) {
    if (boxMm >= clearanceMm && least !== null && boxMm >= least.upperMm) break
    const found = comparePair(first, second, clearanceMm, joined, least?.upperMm ?? Number.POSITIVE_INFINITY)
    if (found.clash !== null) clashes.push(found.clash)
    const counts = !joined.isJoined(first.body, second.body)
    if (counts && found.least !== null && (least === null || found.least.upperMm < least.upperMm)) least = found.least
  }
  return { clashes, least }
}

/** The worst of a pair's clashes, and its least gap between prisms that are far from each other along the part. */
export interface PairFound {
  readonly clash: Clash | null
  readonly least: Gapped | null
  /** By how much the pair may certainly come nearer before anything of it could clash; infinite where nothing of it can. */
  readonly spareMm: number
}

/**
 * @param knownMm  a gap that another pair has: larger ones need no look
 */
export function comparePair(
  first: PlacedBody,
  second: PlacedBody,
  clearanceMm: number,
  joined: JoinedPairs,
  knownMm: number,
): PairFound {
  let clash: Clash | null = null
  let least: Gapped | null = null
  let spareMm = Number.POSITIVE_INFINITY
  const bodyIds = [first.body.id, second.body.id] as const
  const heightsMm = first.body.heightMm + second.body.heightMm
  const ownGapMm = joined.ownGapMm(first.body, second.body)
  const mostMm = ownGapMm === null ? clearanceMm : Math.min(clearanceMm, ROUNDING_SHARE * ownGapMm)
  for (const a of first.prisms) {
    for (const b of second.prisms) {
      const boxMm = boxGapMm(a.box, b.box)
      const isBeyond = boxMm >= Math.min(knownMm, least?.upperMm ?? knownMm)
      if (boxMm >= clearanceMm && isBeyond) {
        spareMm = Math.min(spareMm, boxMm - clearanceMm)
        continue
      }
      const gap = gapOf(a, b)
      if (gap.lowerMm >= clearanceMm && isBeyond) {
        spareMm = Math.min(spareMm, gap.lowerMm - clearanceMm)
        continue
      }
      // Boxes are never farther apart than what they hold: far enough by them is far enough.
      const byBoxesMm = allowGapMm(mostMm, boxGapMm(flatBoxOf(a), flatBoxOf(b)), heightsMm)
      const allowedMm =
        byBoxesMm === mostMm ? mostMm : allowGapMm(mostMm, measureGap(a.flat, b.flat).lowerMm, heightsMm)
      if (allowedMm === clearanceMm && (least === null || gap.upperMm < least.upperMm)) least = { bodyIds, ...gap }
      // What needs no gap, since it lies that near along the part, cannot clash.
      if (allowedMm > 0) spareMm = Math.min(spareMm, Math.max(0, gap.lowerMm - allowedMm))
      if (gap.lowerMm >= allowedMm) continue
      const found: Clash = { bodyIds, ...gap, kind: kindOf(gap, allowedMm, a.sagMm + b.sagMm), allowedMm }
      if (clash === null || RANK[found.kind] > RANK[clash.kind] || isWorse(found, clash)) clash = found
    }
  }
  return { clash, least, spareMm }
}

const RANK: Readonly<Record<Clash['kind'], number>> = { 'cannot-tell': 0, near: 1, touches: 2 }

const isWorse = (found: Clash, than: Clash) => found.kind === than.kind && found.upperMm < than.upperMm

function kindOf({ upperMm }: Bounds, allowedMm: number, sagMm: number): Clash['kind'] {
  if (upperMm >= allowedMm) return 'cannot-tell'
  return upperMm === 0 && sagMm === 0 ? 'touches' : 'near'
}

function gapOf(a: PlacedPrism, b: PlacedPrism): Bounds {
  const { lowerMm, upperMm, at } = measureGap(a.corners, b.corners)
  const sagMm = a.sagMm + b.sagMm
  return { lowerMm: Math.max(0, lowerMm - sagMm), upperMm: upperMm + sagMm, at }
}

interface PairByBox {
  readonly first: PlacedBody
  readonly second: PlacedBody
  readonly boxMm: number
}

/** Nearest boxes first. */
function pairsByBox(bodies: readonly PlacedBody[]): readonly PairByBox[] {
  const pairs: PairByBox[] = []
  bodies.forEach((first, index) => {
    for (const second of bodies.slice(index + 1)) {
      if (!movesApart(first, second)) continue
      pairs.push({ first, second, boxMm: boxGapMm(first.box, second.box) })
    }
  })
  return pairs.sort((a, b) => a.boxMm - b.boxMm)
}

export function movesApart({ body: a }: PlacedBody, { body: b }: PlacedBody): boolean {
  return !('plateId' in a.carrier && 'plateId' in b.carrier && a.carrier.plateId === b.carrier.plateId)
}
