import { type PointNm, sideOfCircle, sideOfLine } from '../predicates'
import { shareOnLine } from './cross'
import { type LineOrArc, shareAtAngle } from './edge'

export type Location = 'inside' | 'on' | 'outside'

/**
 * Where a whole point lies to closed edges, exactly, by how often they wind round it. The polygon of the ends winds as its edges cross
 * the level of the point; an arc adds the piece between it and its chord, in or out of which a point is by the sides of chord and circle.
 * A point on the chord alone counts as moved to the right by less than anything, then up by less than that, for both.
 */
export function locatePoint(edges: readonly LineOrArc[], point: PointNm): Location {
  let winding = 0
  for (const edge of edges) {
    if (isOnEdge(edge, point)) return 'on'
    winding += windingOfChord(edge.from, edge.to, point)
    if (edge.kind === 'arc') {
      const bulge = sideOfLine(edge.from, edge.to, edge.through)
      if (
        sideOfMoved(edge.from, edge.to, point) === bulge &&
        sideOfCircle(edge.from, edge.through, edge.to, point) > 0
      ) {
        winding -= bulge
      }
    }
  }
  return winding === 0 ? 'outside' : 'inside'
}

/** Exact, for a whole point. */
export function isOnEdge(edge: LineOrArc, point: PointNm): boolean {
  // Most lines are elsewhere: the box is asked before the exact sign.
  if (edge.kind === 'line') return isBetween(edge.from, edge.to, point) && sideOfLine(edge.from, edge.to, point) === 0
  const side = sideOfLine(edge.from, edge.to, point)
  if (sideOfCircle(edge.from, edge.through, edge.to, point) !== 0) return false
  return side === sideOfLine(edge.from, edge.to, edge.through) || isEnd(edge, point)
}

const isEnd = ({ from, to }: LineOrArc, [x, y]: PointNm) =>
  (from[0] === x && from[1] === y) || (to[0] === x && to[1] === y)

function isBetween(a: PointNm, b: PointNm, [x, y]: PointNm): boolean {
  return (
    x >= Math.min(a[0], b[0]) && x <= Math.max(a[0], b[0]) && y >= Math.min(a[1], b[1]) && y <= Math.max(a[1], b[1])
  )
}

function windingOfChord(from: PointNm, to: PointNm, point: PointNm): number {
  if (from[1] <= point[1] === to[1] <= point[1]) return 0
  const side = sideOfMoved(from, to, point)
  if (to[1] > from[1]) return side > 0 ? 1 : 0
  return side < 0 ? -1 : 0
}

/** Side of the point as moved to the right, then up, by less than anything. */
function sideOfMoved(from: PointNm, to: PointNm, point: PointNm): number {
  const side = sideOfLine(from, to, point)
  if (side !== 0) return side
  return from[1] !== to[1] ? Math.sign(from[1] - to[1]) : Math.sign(to[0] - from[0])
}

export interface Nearest {
  readonly distanceNm: number
  readonly point: readonly [number, number]
}

/** The point of an edge that lies nearest to `point`. */
export function nearestOnEdge(edge: LineOrArc, point: readonly [number, number]): Nearest {
  const candidates: (readonly [number, number])[] = [edge.from, edge.to]
  if (edge.kind === 'line') {
    const share = shareOnLine(edge, point)
    if (share > 0 && share < 1) {
      candidates.push([
        edge.from[0] + share * (edge.to[0] - edge.from[0]),
        edge.from[1] + share * (edge.to[1] - edge.from[1]),
      ])
    }
  } else {
    const rad = Math.atan2(point[1] - edge.centre[1], point[0] - edge.centre[0])
    if (shareAtAngle(edge, rad) <= 1) {
      candidates.push([edge.centre[0] + edge.radiusNm * Math.cos(rad), edge.centre[1] + edge.radiusNm * Math.sin(rad)])
    }
  }
  return candidates
    .map((found) => ({ point: found, distanceNm: Math.hypot(found[0] - point[0], found[1] - point[1]) }))
    .reduce((best, other) => (other.distanceNm < best.distanceNm ? other : best))
}
