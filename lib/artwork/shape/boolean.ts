import { booleanOp, ClipType, FillRule, type Paths64, rectClip } from 'clipper2-ts'
import type { ExtentNm } from '../apertures/aperture'
import type { FlatPath } from './path'

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

/** The parts of a path inside a rectangle. */
export function clipToRectangle(path: FlatPath, [left, top, right, bottom]: ExtentNm): FlatPath[] {
  return fromPaths(rectClip({ left, top, right, bottom }, toPaths([path])))
}

function toPaths(paths: readonly FlatPath[]): Paths64 {
  return paths.map((path) => {
    const points: { x: number; y: number }[] = []
    for (let at = 0; at + 1 < path.length; at += 2)
      points.push({ x: Math.round(path[at] ?? 0), y: Math.round(path[at + 1] ?? 0) })
    return points
  })
}

function fromPaths(paths: Paths64): FlatPath[] {
  return paths.map((points) => points.flatMap(({ x, y }) => [x, y]))
}
