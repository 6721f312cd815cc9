import type { CopperEdges } from './edges'

/** A border that a straight look from another one meets. */
export interface Facing {
  readonly edge: number
  readonly distanceNm: number
}

/** Looked along in steps as wide as the cells that edges are kept in. */
const STEP_NM = 250_000

/**
 * The first border that is met from a place in a direction.
 *
 * @param ux  of a direction of length 1, with `uy`
 * @param from  the edge that the place lies on, which is left out
 */
export function lookAcross(
  edges: CopperEdges,
  [x, y]: readonly [number, number],
  [ux, uy]: readonly [number, number],
  reachNm: number,
  from: number,
): Facing | null {
  const { ends } = edges
  let found: Facing | null = null
  for (let start = 0; start < reachNm; start += STEP_NM) {
    const middle = start + STEP_NM / 2
    edges.near(x + ux * middle, y + uy * middle, STEP_NM / 2, (edge) => {
      if (edge === from) return
      const [ax = 0, ay = 0, bx = 0, by = 0] = ends.subarray(4 * edge, 4 * edge + 4)
      const [dx, dy] = [bx - ax, by - ay]
      const cross = ux * dy - uy * dx
      if (cross === 0) return
      const along = ((ax - x) * dy - (ay - y) * dx) / cross
      const share = ((ax - x) * uy - (ay - y) * ux) / cross
      if (along <= 0 || along > reachNm || share < 0 || share > 1) return
      if (found === null || along < found.distanceNm) found = { edge, distanceNm: along }
    })
    // Nothing in a later step lies nearer.
    if (found !== null && (found as Facing).distanceNm <= start + STEP_NM) return found
  }
  return found
}

/** Where an edge has its middle, which way it runs and how long it is. Copper lies to its left. */
export function describeEdge({ ends }: CopperEdges, edge: number) {
  const [ax = 0, ay = 0, bx = 0, by = 0] = ends.subarray(4 * edge, 4 * edge + 4)
  const lengthNm = Math.hypot(bx - ax, by - ay)
  return {
    at: [(ax + bx) / 2, (ay + by) / 2] as const,
    ux: lengthNm === 0 ? 0 : (bx - ax) / lengthNm,
    uy: lengthNm === 0 ? 0 : (by - ay) / lengthNm,
    lengthNm,
  }
}
