import { booleanOp, ClipType, EndType, FillRule, inflatePaths, JoinType, type Paths64 } from 'clipper2-ts'
import type { ExtentNm } from '../apertures/aperture'
import { type FlatPath, translate } from './path'

/**
 * Unions and differences by clipper2-ts, which is imported here alone. It takes whole numbers and checks nothing: they are made whole here, and callers bring paths
 * near to the origin, so that its products of coordinates stay exact in doubles.
 */
export function unite(paths: readonly FlatPath[]): FlatPath[] {
  if (paths.length === 0) return []
  return fromPaths(booleanOp(ClipType.Union, toPaths(paths), null, FillRule.NonZero))
}

export function takeAway(from: readonly FlatPath[], what: readonly FlatPath[]): FlatPath[] {
  if (from.length === 0 || what.length === 0) return [...from]
  return fromPaths(booleanOp(ClipType.Difference, toPaths(from), toPaths(what), FillRule.NonZero))
}

/** What two sets of paths cover in common, by winding; near to the origin as above. */
export function intersect(paths: readonly FlatPath[], others: readonly FlatPath[]): FlatPath[] {
  if (paths.length === 0 || others.length === 0) return []
  return fromPaths(booleanOp(ClipType.Intersection, toPaths(paths), toPaths(others), FillRule.NonZero))
}

/** Round corners of what is grown or shrunk are followed this nearly. */
const ROUND_TOLERANCE_NM = 1000
const SHARPEST_MITRE = 2

/** Paths grown by a distance, or shrunk by one below 0; near to the origin as above. */
export function grow(paths: readonly FlatPath[], byNm: number): FlatPath[] {
  if (paths.length === 0) return []
  return fromPaths(
    inflatePaths(toPaths(paths), byNm, JoinType.Round, EndType.Polygon, SHARPEST_MITRE, ROUND_TOLERANCE_NM),
  )
}

/**
 * What paths cover inside a rectangle; they belong together, as holes wind the other way. The library's own clipping to rectangles lost corners of them (2.0.1), its
 * general intersection does not.
 */
export function clipToRectangle(paths: readonly FlatPath[], [minX, minY, maxX, maxY]: ExtentNm): FlatPath[] {
  const [dx, dy] = [Math.round((minX + maxX) / 2), Math.round((minY + maxY) / 2)]
  const rectangle = [minX, minY, maxX, minY, maxX, maxY, minX, maxY]
  const near = (path: FlatPath) => translate(path, -dx, -dy)
  const clipped = booleanOp(
    ClipType.Intersection,
    toPaths(paths.map(near)),
    toPaths([near(rectangle)]),
    FillRule.NonZero,
  )
  return fromPaths(clipped).map((path) => translate(path, dx, dy))
}

/** Whole, finite and with an inside: the library takes anything, and fails on what is none. */
function toPaths(paths: readonly FlatPath[]): Paths64 {
  const made: Paths64 = []
  for (const path of paths) {
    if (path.length < 6 || !path.every(Number.isFinite)) continue
    const points: { x: number; y: number }[] = []
    for (let at = 0; at + 1 < path.length; at += 2)
      points.push({ x: Math.round(path[at] ?? 0), y: Math.round(path[at + 1] ?? 0) })
    made.push(points)
  }
  return made
}

function fromPaths(paths: Paths64): FlatPath[] {
  return paths.map((points) => points.flatMap(({ x, y }) => [x, y]))
}
