import { roundPx } from '../picture'
import type { Point } from '../plan/frame'
import type { Rect } from './pages'

/** The stretch of a line within a rectangle (Liang and Barsky 1984); null where there is none. */
export function clipLine(from: Point, to: Point, { x, y, width, height }: Rect): readonly [Point, Point] | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  let [low, high] = [0, 1]
  for (const [towards, room] of [
    [-dx, from[0] - x],
    [dx, x + width - from[0]],
    [-dy, from[1] - y],
    [dy, y + height - from[1]],
  ] as const) {
    if (towards === 0) {
      if (room < 0) return null
      continue
    }
    const share = room / towards
    if (towards < 0) low = Math.max(low, share)
    else high = Math.min(high, share)
  }
  if (low >= high) return null
  return [
    [from[0] + low * dx, from[1] + low * dy],
    [from[0] + high * dx, from[1] + high * dy],
  ]
}

/** SVG path of a polyline within a rectangle: dashes go on where it does. */
export function clipPath(points: readonly Point[], window: Rect): string {
  let path = ''
  let last: Point | null = null
  for (let at = 0; at + 1 < points.length; at += 1) {
    const cut = clipLine(points[at] as Point, points[at + 1] as Point, window)
    if (cut === null) {
      last = null
      continue
    }
    const [from, to] = cut
    if (last === null || Math.hypot(from[0] - last[0], from[1] - last[1]) > 1e-9) path += `M${write(from)}`
    path += `L${write(to)}`
    last = to
  }
  return path
}

const write = ([x, y]: Point) => `${roundPx(x)},${roundPx(y)}`
