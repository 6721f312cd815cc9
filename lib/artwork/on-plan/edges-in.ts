import type { CopperEdges } from '../copper/edges'
import type { Rings } from './ground'
import { boxOf, isInside } from './rings'

/** Edges of a layer whose middle lies in a place. */
export function edgesIn(edges: CopperEdges, rings: Rings): Set<number> {
  const [minX, minY, maxX, maxY] = boxOf(rings)
  const found = new Set<number>()
  for (let edge = 0; edge < edges.count; edge += 1) {
    const [ax = 0, ay = 0, bx = 0, by = 0] = edges.ends.subarray(4 * edge, 4 * edge + 4)
    const [x, y] = [(ax + bx) / 2, (ay + by) / 2]
    if (x < minX || x > maxX || y < minY || y > maxY) continue
    if (isInside(rings, x, y)) found.add(edge)
  }
  return found
}
