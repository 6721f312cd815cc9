import { type CarriedBody, type FlatBody, listFlatBodies } from '../bodies/flat-bodies'
import { boxGapMm, placeBody } from '../bodies/place-bodies'
import type { FlatPart } from '../kinematics/flat-part'
import { foldPart } from '../kinematics/fold-part'
import { type Clash, comparePair, movesApart } from './find-clashes'
import { findJoined } from './joined-pairs'
import { boundSpeedMm } from './motion-bound'

/** A clash on the way: while which bands were bent, and how far they were. */
export interface ClashOnTheWay {
  readonly step: number
  readonly share: number
  readonly clash: Clash
}

/** Bands that bend together, one step after the other. */
export type FoldOrder = readonly (readonly string[])[]

/** A pair that stays within this of its limit is looked at in steps of it, and no gap below it is told from the limit. */
const RESOLUTION_MM = 0.01
/** Looks at one pair in one step; a pair that needs more is reported as one that cannot be told. */
const MOST_LOOKS = 2000
/** A pair that one bend joins moves by that bend alone: its gap is looked at in this many places. */
const STATIONS = 24

/**
 * Clashes along the whole way of a fold, the first of each pair. Between two looks a pair moves by no more than what it has left, so nothing thin is
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
        const clash = sweepPair(foldAt, first, second, boundSpeedMm(part, moving, first, second), clearanceMm)
        if (clash === null) continue
        done.add(key)
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

function sweepPair(
  foldAt: (share: number) => ReturnType<typeof foldPart>,
  first: FlatBody,
  second: FlatBody,
  speedMm: number,
  clearanceMm: number,
): Omit<ClashOnTheWay, 'step'> | null {
  if (speedMm === 0) return null
  let share = 0
  for (let look = 0; look < MOST_LOOKS; look += 1) {
    const folded = foldAt(share)
    const [a, b] = [placeBody(folded, first), placeBody(folded, second)]
    if (!movesApart(a, b)) return null
    const joined = findJoined(folded)
    const boxMm = boxGapMm(a.box, b.box) - clearanceMm
    let leftMm = boxMm
    // A coarse box says enough where it lets the pair move on by a good part of the way.
    if (boxMm <= speedMm / STATIONS) {
      const pair = comparePair(a, b, clearanceMm, joined, Number.POSITIVE_INFINITY)
      if (pair.clash !== null && pair.clash.kind !== 'cannot-tell') return { share, clash: pair.clash }
      leftMm = joined.isJoined(first, second) || pair.least === null ? 0 : pair.least.lowerMm - clearanceMm
      if (leftMm <= 0)
        leftMm = joined.isJoined(first, second) || pair.least === null ? speedMm / STATIONS : RESOLUTION_MM
    }
    if (share === 1) return null
    share = Math.min(1, share + Math.max(leftMm, RESOLUTION_MM) / speedMm)
  }
  const folded = foldAt(share)
  const pair = comparePair(
    placeBody(folded, first),
    placeBody(folded, second),
    clearanceMm,
    findJoined(folded),
    Number.POSITIVE_INFINITY,
  )
  return pair.least === null ? null : { share, clash: { ...pair.least, kind: 'cannot-tell', allowedMm: clearanceMm } }
}
