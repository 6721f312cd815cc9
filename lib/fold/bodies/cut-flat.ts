import earcut, { flatten } from 'earcut'
import type { PlanePoint } from '../kinematics/flat-part'

/** Corners in order, counter-clockwise or clockwise. */
export type FlatPiece = readonly PlanePoint[]

/**
 * Triangles that fill an area with holes.
 *
 * @param loops  the outline, then holes; corners in order
 * @throws RangeError where the triangles do not fill the area, which a clean outline never does
 */
export function fillWithTriangles(loops: readonly (readonly PlanePoint[])[]): readonly FlatPiece[] {
  const data = flatten(loops.map((loop) => loop.map(([x, y]) => [x, y])))
  const corners = earcut(data.vertices, data.holes, data.dimensions)
  const pointAt = (index: number): PlanePoint => [data.vertices[2 * index] ?? 0, data.vertices[2 * index + 1] ?? 0]
  const triangles: FlatPiece[] = []
  for (let index = 0; index + 2 < corners.length; index += 3) {
    const triangle = [0, 1, 2].map((corner) => pointAt(corners[index + corner] ?? 0))
    if (areaOf(triangle) !== 0) triangles.push(triangle)
  }
  const wanted = loops.reduce((sum, loop, index) => sum + (index === 0 ? 1 : -1) * Math.abs(areaOf(loop)), 0)
  const filled = triangles.reduce((sum, triangle) => sum + Math.abs(areaOf(triangle)), 0)
  if (Math.abs(filled - wanted) > 1e-9 * (Math.abs(wanted) + 1)) {
    throw new RangeError(`an area of ${wanted} mm2 was filled with ${filled} mm2: its outline crosses itself`)
  }
  return triangles
}

/** Of a corner ring, with its sense as sign. */
export function areaOf(loop: FlatPiece): number {
  let doubled = 0
  loop.forEach(([x, y], index) => {
    const [nextX, nextY] = loop[(index + 1) % loop.length] ?? [x, y]
    doubled += x * nextY - nextX * y
  })
  return doubled / 2
}

/** The part of a convex piece between two distances along a direction from a point; empty where there is none. */
export function clipBetween(
  piece: FlatPiece,
  start: PlanePoint,
  along: PlanePoint,
  from: number,
  to: number,
): FlatPiece {
  const distance = ([x, y]: PlanePoint) => (x - start[0]) * along[0] + (y - start[1]) * along[1]
  return clip(
    clip(piece, (point) => distance(point) - from),
    (point) => to - distance(point),
  )
}

/** What lies where the height is not negative (Sutherland and Hodgman 1974). */
function clip(piece: FlatPiece, height: (point: PlanePoint) => number): FlatPiece {
  const kept: PlanePoint[] = []
  piece.forEach((point, index) => {
    const next = piece[(index + 1) % piece.length] ?? point
    const [here, there] = [height(point), height(next)]
    if (here >= 0) kept.push(point)
    if (here < 0 !== there < 0) {
      const share = here / (here - there)
      kept.push([point[0] + share * (next[0] - point[0]), point[1] + share * (next[1] - point[1])])
    }
  })
  return kept.length < 3 ? [] : kept
}
