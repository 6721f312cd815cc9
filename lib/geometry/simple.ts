import { at, type Point, type Polygon, turnOf } from './point'

/** Two edges of an outline that meet where they should not, by the index of the vertex that each begins at. */
export interface Crossing {
  readonly firstEdge: number
  readonly secondEdge: number
  /** They share more than their common corner, or merely touch or cross. */
  readonly kind: 'cross' | 'overlap' | 'no-length'
}

/**
 * First pair of edges that keeps a polygon from being simple; null where it is simple. Edges are swept in the order of
 * their left ends, so that only those that share a stretch of x are compared.
 *
 * Exact for whole micrometres within MAX_COORDINATE_UM.
 */
export function findCrossing(polygon: Polygon): Crossing | null {
  const count = polygon.length
  const edges = polygon.map((from, index) => {
    const to = at(polygon, index + 1)
    return { index, from, to, left: Math.min(from[0], to[0]), right: Math.max(from[0], to[0]) }
  })
  for (const { index, from, to } of edges) {
    if (from[0] === to[0] && from[1] === to[1]) {
      return { firstEdge: index, secondEdge: (index + 1) % count, kind: 'no-length' }
    }
  }
  edges.sort((a, b) => a.left - b.left || a.index - b.index)
  let first: Crossing | null = null
  for (let one = 0; one < edges.length; one += 1) {
    const a = edges[one]
    if (a === undefined) break
    for (let other = one + 1; other < edges.length; other += 1) {
      const b = edges[other]
      if (b === undefined || b.left > a.right) break
      const kind = findContact(polygon, a.index, b.index)
      if (kind === null) continue
      const found: Crossing = {
        firstEdge: Math.min(a.index, b.index),
        secondEdge: Math.max(a.index, b.index),
        kind,
      }
      if (
        first === null ||
        found.firstEdge < first.firstEdge ||
        (found.firstEdge === first.firstEdge && found.secondEdge < first.secondEdge)
      ) {
        first = found
      }
    }
  }
  return first
}

function findContact(polygon: Polygon, one: number, other: number): Crossing['kind'] | null {
  const count = polygon.length
  const [a, b, c, d] = [at(polygon, one), at(polygon, one + 1), at(polygon, other), at(polygon, other + 1)]
  const isNext = (one + 1) % count === other
  const isPrevious = (other + 1) % count === one
  if (isNext || isPrevious) {
    // Neighbours share a corner; they overlap where the way folds back on itself.
    const [before, corner, after] = isNext ? [a, b, d] : [c, d, b]
    const isBack =
      turnOf(before, corner, after) === 0 &&
      (before[0] - corner[0]) * (after[0] - corner[0]) + (before[1] - corner[1]) * (after[1] - corner[1]) > 0
    return isBack ? 'overlap' : null
  }
  return doSegmentsMeet(a, b, c, d) ? 'cross' : null
}

/** Do the closed segments a-b and c-d share a point? */
export function doSegmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  const abc = Math.sign(turnOf(a, b, c))
  const abd = Math.sign(turnOf(a, b, d))
  const cda = Math.sign(turnOf(c, d, a))
  const cdb = Math.sign(turnOf(c, d, b))
  if (abc * abd < 0 && cda * cdb < 0) return true
  return (
    (abc === 0 && isBetween(a, b, c)) ||
    (abd === 0 && isBetween(a, b, d)) ||
    (cda === 0 && isBetween(c, d, a)) ||
    (cdb === 0 && isBetween(c, d, b))
  )
}

/** For a point in line with a and b: does it lie within their bounds? */
function isBetween(a: Point, b: Point, point: Point): boolean {
  return (
    point[0] >= Math.min(a[0], b[0]) &&
    point[0] <= Math.max(a[0], b[0]) &&
    point[1] >= Math.min(a[1], b[1]) &&
    point[1] <= Math.max(a[1], b[1])
  )
}
