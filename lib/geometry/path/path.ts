import type { PointNm } from '../predicates'
import { type LineOrArc, lengthOfEdge, makeEdge, pointAt, reverseEdge, roundPoint, shareAtAngle } from './edge'

/** A point of a path, and how it goes on from there: straight, or in an arc through `via`. */
export interface PathNode {
  readonly at: PointNm
  readonly via: PointNm | null
}

/** A way from its first node to its last; the `via` of the last says nothing. */
export type Path = readonly PathNode[]

/** A closed way: from its last node it goes on to the first. */
export type Loop = readonly PathNode[]

export interface Box {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

export function edgesOfPath(path: Path): LineOrArc[] {
  const edges: LineOrArc[] = []
  for (let at = 0; at + 1 < path.length; at += 1) {
    const [node, next] = [path[at], path[at + 1]]
    if (node !== undefined && next !== undefined) edges.push(makeEdge(node.at, node.via, next.at))
  }
  return edges
}

export function edgesOfLoop(loop: Loop): LineOrArc[] {
  return loop.map((node, at) => makeEdge(node.at, node.via, (loop[at + 1] ?? loop[0] ?? node).at))
}

export function lengthOf(edges: readonly LineOrArc[]): number {
  return edges.reduce((sum, edge) => sum + lengthOfEdge(edge), 0)
}

/** Area inside closed edges in nm2, positive where they run counter-clockwise: the polygon of their ends and the segment of each arc. */
export function signedAreaOf(edges: readonly LineOrArc[]): number {
  const origin = edges[0]?.from
  if (origin === undefined) return 0
  let doubled = 0
  for (const edge of edges) {
    const [ax, ay] = [edge.from[0] - origin[0], edge.from[1] - origin[1]]
    const [bx, by] = [edge.to[0] - origin[0], edge.to[1] - origin[1]]
    doubled += ax * by - ay * bx
    if (edge.kind === 'arc') doubled += edge.radiusNm ** 2 * (edge.sweepRad - Math.sin(edge.sweepRad))
  }
  return doubled / 2
}

/** Least and greatest of x and y; arcs bulge past their ends where they cross a quarter of their circle. */
export function boundsOf(edges: readonly LineOrArc[]): Box {
  const x = extentAlong(edges, [1, 0])
  const y = extentAlong(edges, [0, 1])
  return { minX: x.low, maxX: x.high, minY: y.low, maxY: y.high }
}

/** Whether a point can lie in what the box holds: with a nanometre to spare, since the bulge of an arc is rounded. */
export const isInBox = (box: Box | undefined, [x, y]: PointNm): boolean =>
  box !== undefined && x >= box.minX - 1 && x <= box.maxX + 1 && y >= box.minY - 1 && y <= box.maxY + 1

/** Whether two boxes come within this of each other, in nanometres. */
export const areBoxesNear = (one: Box, other: Box | undefined, withinNm: number): boolean =>
  other !== undefined &&
  one.minX - withinNm <= other.maxX &&
  one.maxX + withinNm >= other.minX &&
  one.minY - withinNm <= other.maxY &&
  one.maxY + withinNm >= other.minY

/** How far edges reach along a direction of length 1: from the least to the greatest product with it. */
export function extentAlong(
  edges: readonly LineOrArc[],
  [dx, dy]: readonly [number, number],
): { readonly low: number; readonly high: number } {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  const take = (x: number, y: number) => {
    const along = x * dx + y * dy
    if (along < low) low = along
    if (along > high) high = along
  }
  for (const edge of edges) {
    take(edge.from[0], edge.from[1])
    take(edge.to[0], edge.to[1])
    if (edge.kind === 'line') continue
    const rad = Math.atan2(dy, dx)
    for (const towards of [rad, rad + Math.PI]) {
      if (shareAtAngle(edge, towards) > 1) continue
      take(edge.centre[0] + edge.radiusNm * Math.cos(towards), edge.centre[1] + edge.radiusNm * Math.sin(towards))
    }
  }
  return { low, high }
}

export function reversePath(edges: readonly LineOrArc[]): LineOrArc[] {
  return edges.map(reverseEdge).reverse()
}

/** A motion of the plane: the images of the unit vectors, and of the origin in nm. */
export interface Motion {
  readonly xTo: readonly [number, number]
  readonly yTo: readonly [number, number]
  readonly move: readonly [number, number]
}

/** Exact for quarter turns, mirrors and whole shifts; rounded to whole nanometres otherwise. */
export function transformPath<N extends PathNode>(path: readonly N[], { xTo, yTo, move }: Motion): PathNode[] {
  const carry = ([x, y]: PointNm): PointNm =>
    roundPoint([x * xTo[0] + y * yTo[0] + move[0], x * xTo[1] + y * yTo[1] + move[1]])
  return path.map(({ at, via }) => ({ at: carry(at), via: via === null ? null : carry(via) }))
}

/** More corners to an arc than a picture or a search can use. */
const MAX_PIECES = 4096

/**
 * Corners in place of arcs, each chord at most `errorNm` inside its arc, that is r(1 - cos(step / 2)). The corners of an arc are the same
 * from either end. Starts of edges alone: the last point of an open path is left to the caller.
 */
export function flattenEdges(edges: readonly LineOrArc[], errorNm: number): PointNm[] {
  return edges.flatMap((edge): PointNm[] => {
    if (edge.kind === 'line') return [edge.from]
    const step = 2 * Math.acos(Math.max(0, 1 - errorNm / edge.radiusNm))
    const pieces = Math.min(MAX_PIECES, Math.max(1, Math.ceil(Math.abs(edge.sweepRad) / step)))
    return Array.from({ length: pieces }, (_, at) => (at === 0 ? edge.from : roundPoint(pointAt(edge, at / pieces))))
  })
}
