import { at, type Point, type Polygon, turnOf } from './point'

/**
 * Triangles that fill a simple polygon, by cutting ears; counter-clockwise. Work grows with the square of the vertices
 * for common outlines.
 *
 * @param polygon  as `tidy` gives it: simple, counter-clockwise, no vertex in line with its neighbours
 * @throws RangeError where no ear is found, which a simple polygon always has (Meisters 1975)
 */
export function triangulate(polygon: Polygon): Polygon[] {
  const ring = [...polygon]
  const triangles: Polygon[] = []
  let from = 0
  while (ring.length > 3) {
    const index = findEar(ring, from)
    if (index === null) throw new RangeError('the outline is not a simple polygon: no corner can be cut off')
    triangles.push([at(ring, index - 1), at(ring, index), at(ring, index + 1)])
    ring.splice(index, 1)
    from = Math.max(0, index - 1)
  }
  if (ring.length === 3 && turnOf(at(ring, 0), at(ring, 1), at(ring, 2)) !== 0) triangles.push(ring)
  return triangles
}

function findEar(ring: readonly Point[], from: number): number | null {
  const reflex = ring.filter((point, index) => turnOf(at(ring, index - 1), point, at(ring, index + 1)) <= 0)
  for (let step = 0; step < ring.length; step += 1) {
    const index = (from + step) % ring.length
    const [a, b, c] = [at(ring, index - 1), at(ring, index), at(ring, index + 1)]
    if (turnOf(a, b, c) <= 0) continue
    const isFree = reflex.every((point) => point === a || point === b || point === c || !isInTriangle(point, a, b, c))
    if (isFree) return index
  }
  return null
}

/** Inside or on the rim. */
function isInTriangle(point: Point, a: Point, b: Point, c: Point): boolean {
  return turnOf(a, b, point) >= 0 && turnOf(b, c, point) >= 0 && turnOf(c, a, point) >= 0
}
