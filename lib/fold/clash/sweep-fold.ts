import { type CarriedBody, type FlatBody, listFlatBodies } from '../bodies/flat-bodies'
import { boxGapMm, type PlacedBody, placeBody } from '../bodies/place-bodies'
import type { FlatPart } from '../kinematics/flat-part'
import { type FoldedPart, foldPart } from '../kinematics/fold-part'
import { lengthOf, minus } from '../kinematics/vector'
import { type Clash, comparePair, type JoinedPairs, movesApart, type PairFound } from './find-clashes'
import { findJoined } from './joined-pairs'
import { type LookCloser, makeLookCloser } from './look-closer'
import { boundSpeedMm } from './motion-bound'

/** A clash on the way: while which bands were bent, and how far they were. */
export interface ClashOnTheWay {
  readonly step: number
  readonly share: number
  readonly clash: Clash
}

/** Bands that bend together, one step after the other. */
export type FoldOrder = readonly (readonly string[])[]

/** A pair that stays within this of its limit is looked at in steps of it, and a gap that falls short of the limit by less is not told. */
const RESOLUTION_MM = 0.01
/** Looks at one pair in one step; a pair that needs more is reported as one that cannot be told. */
const MOST_LOOKS = 2000
/** A pair that one bend joins moves by that bend alone: its gap is looked at in this many places. */
const STATIONS = 24

/**
 * Clashes along the whole way of a fold, the first of each pair, and places where nobody can tell. Between two looks a pair moves by no more than what it has left, so nothing thin is
 * stepped over (conservative advancement, Mirtich 1996).
 *
 * @param firstStep  steps before it are taken as made
 */
export function sweepFold(
  part: FlatPart,
  carried: readonly CarriedBody[],
  fixedPlateId: string,
  order: FoldOrder,
  clearanceMm: number,
  firstStep = 0,
): readonly ClashOnTheWay[] {
  const bodies = listFlatBodies(part, carried).filter(({ prisms }) => prisms.length > 0)
  const found: ClashOnTheWay[] = []
  const done = new Set<string>()
  const joinedAt = findJoined(part)
  const lookCloser = makeLookCloser(part)
  order.forEach((bands, step) => {
    if (step < firstStep) return
    const moving = new Set(bands)
    const sharesAt = (share: number) =>
      new Map(
        part.bands.map(({ id }) => {
          const at = order.findIndex((names) => names.includes(id))
          return [id, at < step && at >= 0 ? 1 : at === step ? share : 0]
        }),
      )
    const foldAt = rememberLast((share: number) => foldPart(part, fixedPlateId, sharesAt(share)))
    bodies.forEach((first, index) => {
      for (const second of bodies.slice(index + 1)) {
        const key = `${first.id}\n${second.id}`
        if (done.has(key)) continue
        const clash = sweepPair(
          { foldAt, joinedAt, lookCloser, clearanceMm },
          first,
          second,
          boundSpeedMm(part, moving, first, second),
        )
        if (clash === null) continue
        if (clash.clash.kind !== 'cannot-tell') done.add(key)
        found.push({ step, ...clash })
      }
    })
  })
  return found
}

function rememberLast<K, V>(compute: (key: K) => V): (key: K) => V {
  let last: { readonly key: K; readonly value: V } | null = null
  return (key) => {
    if (last === null || last.key !== key) last = { key, value: compute(key) }
    return last.value
  }
}

/** What is the same for every look at a pair. */
interface Looks {
  readonly foldAt: (share: number) => FoldedPart
  readonly joinedAt: (folded: FoldedPart) => JoinedPairs
  readonly lookCloser: LookCloser
  readonly clearanceMm: number
}

/** The first clash that is certain; else the first place where nobody can tell, else null. */
function sweepPair(
  { foldAt, joinedAt, lookCloser, clearanceMm }: Looks,
  first: FlatBody,
  second: FlatBody,
  speedMm: number,
): Omit<ClashOnTheWay, 'step'> | null {
  if (speedMm === 0) return null
  let share = 0
  let open: Omit<ClashOnTheWay, 'step'> | null = null
  for (let look = 0; look < MOST_LOOKS; look += 1) {
    const folded = foldAt(share)
    const [a, b] = [placeBody(folded, first), placeBody(folded, second)]
    if (!movesApart(a, b)) return null
    const boxMm = boxGapMm(a.box, b.box) - clearanceMm
    let leftMm = boxMm
    // A coarse box says enough where it lets the pair move on by a good part of the way.
    if (boxMm <= speedMm / STATIONS) {
      const joined = joinedAt(folded)
      const isJoined = joined.isJoined(first, second)
      // What is farther than that lets the pair move on by as much.
      const coarse = comparePair(a, b, clearanceMm, joined, clearanceMm + speedMm / STATIONS)
      // Within the sag of a strip a gap can be told neither from a clash nor from enough: finer strips tell.
      const isSettled = ({ clash, spareMm }: PairFound) =>
        clash === null ? isJoined || spareMm > RESOLUTION_MM : clash.kind !== 'cannot-tell'
      const found = isSettled(coarse)
        ? coarse
        : (lookCloser(folded, [first, second], clearanceMm, joined, isSettled) ?? coarse)
      if (found.clash !== null && found.clash.kind !== 'cannot-tell') return { share, clash: found.clash }
      if (found.clash !== null) open ??= { share, clash: found.clash }
      leftMm = isJoined ? speedMm / STATIONS : found.spareMm
    }
    if (share === 1) return open
    share = Math.min(1, share + Math.max(leftMm, RESOLUTION_MM) / speedMm)
  }
  return (
    open ?? { share, clash: giveUp(placeBody(foldAt(share), first), placeBody(foldAt(share), second), clearanceMm) }
  )
}

/** A pair that never gets far from its limit: more looks than anybody waits for. */
function giveUp(first: PlacedBody, second: PlacedBody, clearanceMm: number): Clash {
  const [a, b] = [
    first.prisms[0]?.corners[0] ?? ([0, 0, 0] as const),
    second.prisms[0]?.corners[0] ?? ([0, 0, 0] as const),
  ]
  return {
    bodyIds: [first.body.id, second.body.id],
    kind: 'cannot-tell',
    lowerMm: Math.max(0, boxGapMm(first.box, second.box)),
    upperMm: lengthOf(minus(a, b)),
    at: a,
    allowedMm: clearanceMm,
  }
}
