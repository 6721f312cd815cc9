import { isAtMostHalf, makeArc, makeEdge, pointAt, roundPoint } from '@/lib/geometry'
import type { PlanNode } from '../document/path-schema'
import type { PointMm } from '../document/primitives'
import { toMm, toNm } from '../document/to-geometry'

/** Paths as somebody edits them. What is asked of a path that is not there, or cannot be, is null. */

/** Coordinates of a document reach this far. */
const REACH_MM = 5000

/** Onto whole nanometres; null where the plane ends. */
export function wholePoint(pointMm: readonly [number, number]): PointMm | null {
  const [x, y] = pointMm
  if (!(Math.abs(x) <= REACH_MM && Math.abs(y) <= REACH_MM)) return null
  return toMm([x * 1e6, y * 1e6])
}

/** Moves one point; the arcs that end there keep their share of a circle. */
export function movePoint(nodes: readonly PlanNode[], at: number, to: PointMm, isClosed: boolean): PlanNode[] | null {
  const node = nodes[at]
  if (node === undefined) return null
  const next = nodes[at + 1] ?? (isClosed ? nodes[0] : undefined)
  const before = nodes[at - 1] ?? (isClosed ? nodes.at(-1) : undefined)
  return nodes.map((present, index) => {
    if (index === at) {
      const viaMm = next === undefined ? null : carryVia(present.viaMm, [present.atMm, next.atMm], [to, next.atMm])
      return { atMm: to, viaMm }
    }
    if (present === before) {
      return { ...present, viaMm: carryVia(present.viaMm, [present.atMm, node.atMm], [present.atMm, to]) }
    }
    return present
  })
}

/** The through-point of an arc on another chord: turned and scaled with it. Null where no arc is left. */
function carryVia(
  via: PointMm | null,
  [a, b]: readonly [PointMm, PointMm],
  [c, d]: readonly [PointMm, PointMm],
): PointMm | null {
  if (via === null) return null
  const [x, y] = [b[0] - a[0], b[1] - a[1]]
  const [u, v] = [via[0] - a[0], via[1] - a[1]]
  const length2 = x * x + y * y
  if (length2 === 0) return null
  const [along, across] = [(u * x + v * y) / length2, (v * x - u * y) / length2]
  const [p, q] = [d[0] - c[0], d[1] - c[1]]
  const carried = wholePoint([c[0] + along * p - across * q, c[1] + along * q + across * p])
  return carried !== null && isArc(c, carried, d) ? carried : null
}

export function isArc(from: PointMm, via: PointMm, to: PointMm): boolean {
  const arc = makeArc(toNm(from), toNm(via), toNm(to))
  return arc !== null && isAtMostHalf(arc)
}

/** The same path with a point more; an arc becomes two of the same circle, to whole nanometres. */
export function splitEdge(nodes: readonly PlanNode[], at: number, share: number, isClosed: boolean): PlanNode[] | null {
  const node = nodes[at]
  const next = nodes[at + 1] ?? (isClosed ? nodes[0] : undefined)
  if (node === undefined || next === undefined || !(share > 0 && share < 1)) return null
  if (node.viaMm !== null && !isArc(node.atMm, node.viaMm, next.atMm)) return null
  const edge = makeEdge(toNm(node.atMm), node.viaMm === null ? null : toNm(node.viaMm), toNm(next.atMm))
  const place = (where: number): PointMm => toMm(roundPoint(pointAt(edge, where)))
  const middle = place(share)
  if (isSame(middle, node.atMm) || isSame(middle, next.atMm)) return null
  const via = (from: PointMm, where: number, to: PointMm): PointMm | null => {
    const through = place(where)
    return edge.kind === 'arc' && isArc(from, through, to) ? through : null
  }
  return [
    ...nodes.slice(0, at),
    { atMm: node.atMm, viaMm: via(node.atMm, share / 2, middle) },
    { atMm: middle, viaMm: via(middle, (1 + share) / 2, next.atMm) },
    ...nodes.slice(at + 1),
  ]
}

/** Without one point: the ways on both sides of it become one straight way. */
export function removePoint(nodes: readonly PlanNode[], at: number, isClosed: boolean): PlanNode[] | null {
  if (nodes[at] === undefined || nodes.length <= (isClosed ? 3 : 2)) return null
  const before = at > 0 ? at - 1 : isClosed ? nodes.length - 1 : -1
  const kept = nodes.map((node, index) => (index === before ? { ...node, viaMm: null } : node))
  const left = kept.filter((_, index) => index !== at)
  return isClosed ? left : endOpen(left)
}

/** An open path goes nowhere from its last point. */
export function endOpen(nodes: readonly PlanNode[]): PlanNode[] {
  return nodes.map((node, index) => (index === nodes.length - 1 ? { ...node, viaMm: null } : node))
}

export const isSame = (a: PointMm, b: PointMm): boolean => a[0] === b[0] && a[1] === b[1]

/** All by one shift; null where a point leaves the plane. */
export function shiftNodes(nodes: readonly PlanNode[], byMm: PointMm): PlanNode[] | null {
  const moved: PlanNode[] = []
  for (const { atMm, viaMm } of nodes) {
    const at = shiftPoint(atMm, byMm)
    const via = viaMm === null ? null : shiftPoint(viaMm, byMm)
    if (at === null || (viaMm !== null && via === null)) return null
    moved.push({ atMm: at, viaMm: via })
  }
  return moved
}

export const shiftPoint = ([x, y]: PointMm, [dx, dy]: PointMm): PointMm | null => wholePoint([x + dx, y + dy])
