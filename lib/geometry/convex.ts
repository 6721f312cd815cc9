import { at, type Point, type Polygon, turnOf } from './point'

/** Convex hull, counter-clockwise, without points in line (Andrew's monotone chain). */
export function getConvexHull(points: readonly Point[]): Polygon {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  if (sorted.length < 3) return sorted
  const lower = buildChain(sorted)
  const upper = buildChain(sorted.reverse())
  return [...lower.slice(0, -1), ...upper.slice(0, -1)]
}

function buildChain(points: readonly Point[]): Point[] {
  const chain: Point[] = []
  for (const point of points) {
    while (chain.length >= 2 && turnOf(at(chain, -2), at(chain, -1), point) <= 0) chain.pop()
    chain.push(point)
  }
  return chain
}

/**
 * Minkowski sum of two convex polygons, counter-clockwise: edges of both in the order of their directions.
 * A single point counts as a polygon and moves the other one.
 */
export function addConvex(a: Polygon, b: Polygon): Polygon {
  const startA = findLowest(a)
  const startB = findLowest(b)
  const sum: Point[] = []
  let i = 0
  let j = 0
  while (i < a.length || j < b.length) {
    const fromA = at(a, startA + i)
    const fromB = at(b, startB + j)
    sum.push([fromA[0] + fromB[0], fromA[1] + fromB[1]])
    const toA = at(a, startA + i + 1)
    const toB = at(b, startB + j + 1)
    const turn = (toA[0] - fromA[0]) * (toB[1] - fromB[1]) - (toA[1] - fromA[1]) * (toB[0] - fromB[0])
    if (j >= b.length || (i < a.length && turn > 0)) i += 1
    else if (i >= a.length || turn < 0) j += 1
    else {
      i += 1
      j += 1
    }
  }
  return sum
}

/** Turned by half about 0, 0. */
export function negate(polygon: Polygon): Polygon {
  return polygon.map(([x, y]) => [0 - x, 0 - y])
}

/** Sides of the polygon that stands for a circle in clearances. */
const CIRCLE_SIDES = 16

/**
 * A convex polygon in whole micrometres that holds the whole disc of a radius round 0, 0, and touches it on both axes:
 * clearances kept by it are never too small, exact along the axes and at most 2 % (and 1 um) too large elsewhere.
 * Each corner is rounded away from the middle, which can only add to the hull of a shape that is alike in all quadrants.
 */
export function makeDisc(radiusUm: number): Polygon {
  if (radiusUm === 0) return [[0, 0]]
  const cornerUm = radiusUm / Math.cos(Math.PI / CIRCLE_SIDES)
  const quadrant: Point[] = []
  for (let index = 0; index < CIRCLE_SIDES / 4; index += 1) {
    const angle = ((2 * index + 1) * Math.PI) / CIRCLE_SIDES
    const isFirst = index === 0
    const isLast = index === CIRCLE_SIDES / 4 - 1
    quadrant.push([
      isFirst ? radiusUm : Math.ceil(cornerUm * Math.cos(angle) - 1e-6),
      isLast ? radiusUm : Math.ceil(cornerUm * Math.sin(angle) - 1e-6),
    ])
  }
  return getConvexHull(
    quadrant.flatMap(([x, y]): Point[] => [
      [x, y],
      [-x, y],
      [x, -y],
      [-x, -y],
    ]),
  )
}

function findLowest(polygon: Polygon): number {
  let lowest = 0
  polygon.forEach((point, index) => {
    const best = at(polygon, lowest)
    if (point[1] < best[1] || (point[1] === best[1] && point[0] < best[0])) lowest = index
  })
  return lowest
}
