import { convexHull } from '../shape/path'
import { type CopperEdges, FAR_NM, toSegment } from './edges'
import { describeEdge } from './facing'

export interface Narrowest {
  readonly widthNm: number
  /** In the middle of it. */
  readonly at: readonly [xNm: number, yNm: number]
}

export interface NarrowPlaces {
  /** Copper between two borders of one piece; null where none is narrower than is looked for. */
  readonly neck: Narrowest | null
  /** A gap between two borders of one piece. */
  readonly slot: Narrowest | null
}

/** Past this many edges a layer is a picture, or takes longer than the answer is worth. */
const MOST_EDGES = 1_500_000
/** Narrower figures are what rounding leaves where drawn shapes touch: arcs are followed to 1 um, from both sides. */
const LEAST_NM = 2000
/** Borders that come nearer by less than this, over the way along them, keep their distance: rounding of short edges. */
const SAME_WAY = 0.01

/**
 * Where copper, and a gap within one piece of copper, is narrowest: two borders face each other there, and come no nearer to each other to either side. Gaps between two
 * pieces are `findLeastSpace`'s. Within 2 um.
 *
 * @param farNm  what is wider is wide
 * @param longestDotNm  pieces up to this long are looked at as a whole too
 */
export function findNarrowPlaces(
  edges: CopperEdges,
  { farNm = FAR_NM, longestDotNm = 2 * farNm }: { readonly farNm?: number; readonly longestDotNm?: number } = {},
): NarrowPlaces | null {
  if (edges.count > MOST_EDGES) return null
  const { ends, islands, next } = edges
  const before = reverseOf(next)
  let neck: Narrowest | null = null
  let slot: Narrowest | null = null
  let [leastNeck, leastSlot] = [farNm, farNm]
  const consider = (from: number, place: PlaceOnEdge, x: number, y: number, other: number) => {
    const [ax = 0, ay = 0, bx = 0, by = 0] = ends.subarray(4 * other, 4 * other + 4)
    const [dx, dy] = toSegment(x, y, ax, ay, bx, by)
    const widthNm = Math.hypot(dx, dy)
    if (widthNm < LEAST_NM || widthNm >= Math.max(leastNeck, leastSlot)) return
    const [ux, uy] = [dx / widthNm, dy / widthNm]
    const own = describeEdge(edges, from)
    const facing = describeEdge(edges, other)
    const side = own.ux * uy - own.uy * ux
    // Both look into copper, or both over the gap.
    if (side * (facing.uy * ux - facing.ux * uy) <= 0) return
    if (side > 0 ? widthNm >= leastNeck : widthNm >= leastSlot) return
    if (!isNearest(edges, before, from, place, ux, uy)) return
    const [qx, qy] = [x + dx, y + dy]
    const atStart = qx === ax && qy === ay
    if ((atStart || (qx === bx && qy === by)) && !isNearest(edges, before, other, atStart ? 'start' : 'end', -ux, -uy))
      return
    const found: Narrowest = { widthNm, at: [x + dx / 2, y + dy / 2] }
    if (side > 0) {
      neck = found
      leastNeck = widthNm
    } else {
      slot = found
      leastSlot = widthNm
    }
  }
  for (let edge = 0; edge < edges.count; edge += 1) {
    const [ax = 0, ay = 0, bx = 0, by = 0] = ends.subarray(4 * edge, 4 * edge + 4)
    edges.nearEdge(edge, Math.max(leastNeck, leastSlot), (other) => {
      if (other === edge || islands[other] !== islands[edge]) return
      if (next[edge] === other || next[other] === edge) return
      consider(edge, 'start', ax, ay, other)
      consider(edge, 'end', bx, by, other)
      const share = middleOfFacing(edges, edge, other)
      if (share !== null) consider(edge, 'inside', ax + (bx - ax) * share, ay + (by - ay) * share, other)
    })
  }
  const dot = findNarrowestDot(edges, leastNeck, longestDotNm)
  return { neck: dot ?? neck, slot }
}

type PlaceOnEdge = 'start' | 'end' | 'inside'

/** Where an edge faces another that runs the other way: in the middle of what faces it, as a share of its length; null where nothing does. */
function middleOfFacing(edges: CopperEdges, edge: number, other: number): number | null {
  const { ends } = edges
  const [x = 0, y = 0, bx = 0, by = 0] = [ends[4 * edge], ends[4 * edge + 1], ends[4 * edge + 2], ends[4 * edge + 3]]
  const [cx = 0, cy = 0, dx = 0, dy = 0] = [
    ends[4 * other],
    ends[4 * other + 1],
    ends[4 * other + 2],
    ends[4 * other + 3],
  ]
  const [vx, vy, wx, wy] = [bx - x, by - y, dx - cx, dy - cy]
  const dot = vx * wx + vy * wy
  const square = vx * vx + vy * vy
  // Most pairs end here: without roots.
  if (dot >= 0 || square === 0 || dot * dot < COS_SAME_WAY ** 2 * square * (wx * wx + wy * wy)) return null
  const along = (px: number, py: number) => ((px - x) * vx + (py - y) * vy) / square
  const [from, to] = [Math.max(0, along(dx, dy)), Math.min(1, along(cx, cy))]
  return to > from ? (from + to) / 2 : null
}

const COS_SAME_WAY = Math.cos(SAME_WAY)

/** Does the border come no nearer to what lies in a direction, to either side of a place on an edge? Unknown is no. */
function isNearest(
  edges: CopperEdges,
  before: Int32Array,
  edge: number,
  place: PlaceOnEdge,
  ux: number,
  uy: number,
): boolean {
  if (place === 'inside') {
    const { ux: vx, uy: vy } = describeEdge(edges, edge)
    return Math.abs(vx * ux + vy * uy) <= SAME_WAY
  }
  const [arriving, leaving] = place === 'end' ? [edge, edges.next[edge] ?? -1] : [before[edge] ?? -1, edge]
  if (arriving < 0 || leaving < 0) return false
  const [there, onward] = [describeEdge(edges, arriving), describeEdge(edges, leaving)]
  return onward.ux * ux + onward.uy * uy <= SAME_WAY && there.ux * ux + there.uy * uy >= -SAME_WAY
}

export function reverseOf(next: Int32Array): Int32Array {
  const before = new Int32Array(next.length).fill(-1)
  for (let edge = 0; edge < next.length; edge += 1) {
    const following = next[edge] ?? -1
    if (following >= 0) before[following] = edge
  }
  return before
}

/** A dot faces itself nowhere: its width is that of its hull. Null where none is narrower. */
function findNarrowestDot({ ends, islands, count }: CopperEdges, farNm: number, longestNm: number): Narrowest | null {
  const boxes = new Map<number, [number, number, number, number]>()
  for (let edge = 0; edge < count; edge += 1) {
    const [x = 0, y = 0] = ends.subarray(4 * edge, 4 * edge + 2)
    const box = boxes.get(islands[edge] ?? -1)
    if (box === undefined) boxes.set(islands[edge] ?? -1, [x, y, x, y])
    else {
      box[0] = Math.min(box[0], x)
      box[1] = Math.min(box[1], y)
      box[2] = Math.max(box[2], x)
      box[3] = Math.max(box[3], y)
    }
  }
  const points = new Map<number, number[]>()
  for (const [island, [minX, minY, maxX, maxY]] of boxes)
    if (Math.max(maxX - minX, maxY - minY) <= longestNm) points.set(island, [])
  for (let edge = 0; edge < count; edge += 1)
    points.get(islands[edge] ?? -1)?.push(...ends.subarray(4 * edge, 4 * edge + 2))
  let least: Narrowest | null = null
  for (const [island, own] of points) {
    const widthNm = widthOfHull(convexHull(own))
    const [minX, minY, maxX, maxY] = boxes.get(island) ?? [0, 0, 0, 0]
    if (widthNm < LEAST_NM || widthNm >= (least?.widthNm ?? farNm)) continue
    least = { widthNm, at: [(minX + maxX) / 2, (minY + maxY) / 2] }
  }
  return least
}

/** Of a convex border: the least distance between two lines along it that hold it. One of them runs along an edge. */
export function widthOfHull(hull: readonly number[]): number {
  let least = Infinity
  for (let at = 0; at < hull.length; at += 2) {
    const [ax = 0, ay = 0] = [hull[at], hull[at + 1]]
    const following = (at + 2) % hull.length
    const [dx, dy] = [(hull[following] ?? 0) - ax, (hull[following + 1] ?? 0) - ay]
    const length = Math.hypot(dx, dy)
    if (length === 0) continue
    let most = 0
    for (let other = 0; other < hull.length; other += 2)
      most = Math.max(most, (dx * ((hull[other + 1] ?? 0) - ay) - dy * ((hull[other] ?? 0) - ax)) / length)
    least = Math.min(least, most)
  }
  return least
}
