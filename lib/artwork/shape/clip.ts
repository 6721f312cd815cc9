import type { ExtentNm } from '../apertures/aperture'
import type { FlatPath } from './path'

/**
 * The part of a convex path in a rectangle (Sutherland and Hodgman 1974). Paths that are not convex fall apart, and would keep edges that run there and back along the
 * rectangle: for those see `clipToRectangle`.
 */
export function clipConvex(path: FlatPath, [minX, minY, maxX, maxY]: ExtentNm): FlatPath {
  let clipped = path
  for (const [axis, limit, keepsBelow] of [
    [0, minX, false],
    [1, minY, false],
    [0, maxX, true],
    [1, maxY, true],
  ] as const) {
    if (clipped.length > 0) clipped = clipToHalfPlane(clipped, axis, limit, keepsBelow)
  }
  return clipped
}

function clipToHalfPlane(path: readonly number[], axis: 0 | 1, limit: number, keepsBelow: boolean): FlatPath {
  const kept: FlatPath = []
  const isIn = (value: number) => (keepsBelow ? value <= limit : value >= limit)
  const count = path.length
  let fromX = path[count - 2] ?? 0
  let fromY = path[count - 1] ?? 0
  let wasIn = isIn(axis === 0 ? fromX : fromY)
  for (let at = 0; at + 1 < count; at += 2) {
    const x = path[at] ?? 0
    const y = path[at + 1] ?? 0
    const nowIn = isIn(axis === 0 ? x : y)
    if (nowIn !== wasIn) {
      if (axis === 0) kept.push(limit, fromY + ((y - fromY) * (limit - fromX)) / (x - fromX))
      else kept.push(fromX + ((x - fromX) * (limit - fromY)) / (y - fromY), limit)
    }
    if (nowIn) kept.push(x, y)
    fromX = x
    fromY = y
    wasIn = nowIn
  }
  return kept.length < 6 ? [] : kept
}
