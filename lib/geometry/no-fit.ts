import { addConvex, makeDisc, negate } from './convex'
import { at, type Polygon } from './point'
import { getBounds } from './polygon'

/** Open interval of whole micrometres in ascending pairs: [left, right, left, right ...]; the ends themselves are free. */
export type Intervals = readonly number[]

/**
 * Where a moving shape may not stand beside a fixed one: the no-fit polygon, as a union of convex ones that is never
 * joined explicitly. All corners are whole micrometres and every answer is exact for the pieces given.
 */
export interface NoFit {
  /** Offsets beyond these never collide. */
  readonly minX: number
  readonly maxX: number
  readonly minY: number
  readonly maxY: number
  /** Would the moving shape, moved by this offset, come nearer than the clearance? */
  readonly isBlocked: (dx: number, dy: number) => boolean
  /** All blocked offsets at one height, merged; the ends are rounded to the whole micrometres that are free. */
  readonly getBlockedAt: (dy: number) => Intervals
  /** Number of convex pieces: what one question costs. */
  readonly pieceCount: number
}

/** A convex piece of the union, its rim split into two ways up. */
interface Slab {
  readonly minY: number
  readonly maxY: number
  readonly minX: number
  readonly maxX: number
  /** x, y of each corner, upwards. */
  readonly left: readonly number[]
  readonly right: readonly number[]
}

/**
 * No-fit polygon of two shapes given as convex pieces: the union over pairs of pieces of fixed + (-moving), widened by
 * the clearance. Two shapes keep the clearance exactly when the offset lies outside the interior of it (Minkowski sums;
 * Stoyan 1983, Burke et al. 2007, from memory). The clearance's circle is a polygon that holds it: see makeDisc.
 *
 * @param clearanceUm  least distance between the two shapes; at 0 they may touch
 */
export function makeNoFit(fixed: readonly Polygon[], moving: readonly Polygon[], clearanceUm: number): NoFit {
  const disc = makeDisc(clearanceUm)
  const widened = fixed.map((piece) => addConvex(piece, disc))
  const mirrored = moving.map(negate)
  const slabs = widened.flatMap((piece) => mirrored.map((other) => makeSlab(addConvex(piece, other))))
  const sorted = slabs.sort((a, b) => a.minY - b.minY)
  const kept = new Map<number, Intervals>()
  const getBlockedAt = (dy: number): Intervals => {
    const known = kept.get(dy)
    if (known !== undefined) return known
    const blocked = mergeAt(sorted, dy)
    kept.set(dy, blocked)
    return blocked
  }
  const bounds = {
    minX: Math.min(...sorted.map(({ minX }) => minX)),
    maxX: Math.max(...sorted.map(({ maxX }) => maxX)),
    minY: Math.min(...sorted.map(({ minY }) => minY)),
    maxY: Math.max(...sorted.map(({ maxY }) => maxY)),
  }
  return {
    ...bounds,
    pieceCount: sorted.length,
    getBlockedAt,
    isBlocked: (dx, dy) => {
      if (dx <= bounds.minX || dx >= bounds.maxX || dy <= bounds.minY || dy >= bounds.maxY) return false
      const blocked = getBlockedAt(dy)
      for (let index = 0; index < blocked.length; index += 2) {
        if (dx > at(blocked, index) && dx < at(blocked, index + 1)) return true
      }
      return false
    },
  }
}

function makeSlab(convex: Polygon): Slab {
  const bounds = getBounds(convex)
  const left: number[] = []
  const right: number[] = []
  let bottom = 0
  convex.forEach(([x, y], index) => {
    const best = at(convex, bottom)
    if (y < best[1] || (y === best[1] && x > best[0])) bottom = index
  })
  // Counter-clockwise from the rightmost of the lowest corners: up along the right, then down along the left.
  const ring = convex.map((_, index) => at(convex, bottom + index))
  const top = ring.findIndex(([, y]) => y === bounds.maxY)
  ring.slice(0, top + 1).forEach(([x, y]) => {
    right.push(x, y)
  })
  const down = [...ring.slice(top), at(ring, 0)]
  for (const [x, y] of down.reverse()) left.push(x, y)
  return { ...bounds, left, right }
}

function mergeAt(slabs: readonly Slab[], dy: number): Intervals {
  const found: [number, number][] = []
  for (const slab of slabs) {
    if (slab.minY >= dy) break
    if (slab.maxY <= dy) continue
    found.push([findAlong(slab.left, dy, Math.floor), findAlong(slab.right, dy, Math.ceil)])
  }
  found.sort((a, b) => a[0] - b[0])
  const merged: number[] = []
  for (const [from, to] of found) {
    const last = merged.length - 1
    // Intervals are open: where one ends and the next begins, the end itself is free.
    if (last > 0 && from < at(merged, last)) {
      if (to > at(merged, last)) merged[last] = to
    } else merged.push(from, to)
  }
  return merged
}

/** x at a height on a way up, rounded; exact, as no product leaves the whole numbers. */
function findAlong(way: readonly number[], y: number, round: (value: number) => number): number {
  let index = 0
  while (index + 3 < way.length && at(way, index + 3) < y) index += 2
  const [x0, y0, x1, y1] = [at(way, index), at(way, index + 1), at(way, index + 2), at(way, index + 3)]
  if (y1 === y) return x1
  if (y1 === y0) return round === Math.floor ? Math.min(x0, x1) : Math.max(x0, x1)
  return x0 + roundedQuotient((x1 - x0) * (y - y0), y1 - y0, round)
}

/** Quotient rounded by floor or ceil; the remainder decides, not the rounding of the division. */
function roundedQuotient(dividend: number, divisor: number, round: (value: number) => number): number {
  let quotient = round(dividend / divisor)
  if (round === Math.floor) {
    while (quotient * divisor > dividend) quotient -= 1
    while ((quotient + 1) * divisor <= dividend) quotient += 1
  } else {
    while (quotient * divisor < dividend) quotient += 1
    while ((quotient - 1) * divisor >= dividend) quotient -= 1
  }
  return quotient
}
