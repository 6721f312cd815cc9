import { at, type Point, type Polygon } from './point'

/** Smallest upright rectangle round a shape. */
export interface Bounds {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** The quarter turns by which parts are placed; they keep whole micrometres whole. */
export const QUARTER_TURNS_DEG = [0, 90, 180, 270] as const
export type QuarterTurnDeg = (typeof QUARTER_TURNS_DEG)[number]

/** Twice the area by the shoelace formula, positive counter-clockwise; exact while the area is below 4500 m2. */
export function getDoubleArea(polygon: Polygon): number {
  const [origin] = polygon
  if (origin === undefined) return 0
  let sum = 0
  for (let index = 0; index < polygon.length; index += 1) {
    const a = at(polygon, index)
    const b = at(polygon, index + 1)
    sum += (a[0] - origin[0]) * (b[1] - origin[1]) - (b[0] - origin[0]) * (a[1] - origin[1])
  }
  return sum
}

/** Area in square micrometres, whatever the direction of the vertices. */
export function getAreaUm2(polygon: Polygon): number {
  return Math.abs(getDoubleArea(polygon)) / 2
}

/** @throws RangeError for an empty polygon */
export function getBounds(polygon: Polygon): Bounds {
  if (polygon.length === 0) throw new RangeError('an empty polygon has no bounds')
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of polygon) {
    minX = Math.min(minX, x)
    minY = Math.min(minY, y)
    maxX = Math.max(maxX, x)
    maxY = Math.max(maxY, y)
  }
  return { minX, minY, maxX, maxY }
}

export function translate(polygon: Polygon, [dx, dy]: Point): Polygon {
  return polygon.map(([x, y]) => [x + dx, y + dy])
}

/** Moves a shape so that its bounds begin at 0, 0. */
export function moveToOrigin(polygon: Polygon): Polygon {
  const { minX, minY } = getBounds(polygon)
  return translate(polygon, [-minX, -minY])
}

/** Turned counter-clockwise about 0, 0. */
export function turnBy(polygon: Polygon, turnDeg: QuarterTurnDeg): Polygon {
  switch (turnDeg) {
    case 0:
      return polygon
    case 90:
      return polygon.map(([x, y]) => [0 - y, x])
    case 180:
      return polygon.map(([x, y]) => [0 - x, 0 - y])
    case 270:
      return polygon.map(([x, y]) => [y, 0 - x])
  }
}

/**
 * The same outline counter-clockwise, without vertices that repeat or lie on the straight way between their neighbours.
 * Expects a simple polygon.
 */
export function tidy(polygon: Polygon): Polygon {
  const forward = getDoubleArea(polygon) < 0 ? [...polygon].reverse() : [...polygon]
  let ring: Point[] = forward
  for (;;) {
    const kept = ring.filter((point, index) => {
      const previous = at(ring, index - 1)
      const next = at(ring, index + 1)
      const turn =
        (point[0] - previous[0]) * (next[1] - previous[1]) - (point[1] - previous[1]) * (next[0] - previous[0])
      return turn !== 0
    })
    if (kept.length === ring.length || kept.length < 3) return kept
    ring = kept
  }
}

/** Four corners at right angles along the axes. */
export function isUprightRectangle(polygon: Polygon): boolean {
  if (polygon.length < 4) return false
  const { minX, minY, maxX, maxY } = getBounds(polygon)
  return getAreaUm2(polygon) === (maxX - minX) * (maxY - minY)
}
