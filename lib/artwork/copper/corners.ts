import type { CopperEdges } from './edges'
import { describeEdge } from './facing'
import { reverseOf } from './narrow'

/** A corner of a border, by its angle. */
export interface Corner {
  readonly deg: number
  readonly at: readonly [xNm: number, yNm: number]
}

export interface SharpCorners {
  /** Of copper: a point that lifts. Null where none is sharper than is looked for. */
  readonly tip: Corner | null
  /** Of a gap: a wedge that holds etchant. */
  readonly wedge: Corner | null
}

/** Corners that are less sharp are left alone. */
const FAR_DEG = 80
/** A corner turns by this at one point; round ends of narrow strokes do not. */
const LEAST_TURN_DEG = 90
/** The angle is that under which the border is seen this far along it to either side. What is smaller than this is no corner but its roughness. */
const ARM_NM = 50_000

/** The sharpest corners of copper and of gaps; within 2.5°, as arcs are followed to 1 um. */
export function findSharpCorners(edges: CopperEdges): SharpCorners {
  const before = reverseOf(edges.next)
  let tip: Corner | null = null
  let wedge: Corner | null = null
  for (let edge = 0; edge < edges.count; edge += 1) {
    const leaving = edges.next[edge] ?? -1
    if (leaving < 0) continue
    const [one, other] = [describeEdge(edges, edge), describeEdge(edges, leaving)]
    if (one.ux * other.ux + one.uy * other.uy > COS_LEAST_TURN) continue
    const [x = 0, y = 0] = edges.ends.subarray(4 * edge + 2, 4 * edge + 4)
    const back = walk(edges, edge, before, true)
    const onward = walk(edges, leaving, edges.next, false)
    if (back === null || onward === null) continue
    // Copper lies to the left: a turn to the left is a corner of copper.
    const isTip = one.ux * other.uy - one.uy * other.ux > 0
    const deg = angleBetween([back[0] - x, back[1] - y], [onward[0] - x, onward[1] - y])
    if (deg >= ((isTip ? tip : wedge)?.deg ?? FAR_DEG)) continue
    if (isTip) tip = { deg, at: [x, y] }
    else wedge = { deg, at: [x, y] }
  }
  return { tip, wedge }
}

const COS_LEAST_TURN = Math.cos((LEAST_TURN_DEG * Math.PI) / 180)

/** The place an arm's length along a border; null where it is not known how the border goes on. */
function walk(
  { ends }: CopperEdges,
  from: number,
  following: Int32Array,
  isBack: boolean,
): readonly [number, number] | null {
  let left = ARM_NM
  for (let edge = from; edge >= 0; edge = following[edge] ?? -1) {
    const [ax = 0, ay = 0, bx = 0, by = 0] = ends.subarray(4 * edge, 4 * edge + 4)
    const [sx, sy, tx, ty] = isBack ? [bx, by, ax, ay] : [ax, ay, bx, by]
    const length = Math.hypot(tx - sx, ty - sy)
    if (length >= left) return [sx + ((tx - sx) * left) / length, sy + ((ty - sy) * left) / length]
    left -= length
  }
  return null
}

function angleBetween([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): number {
  return (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI
}
