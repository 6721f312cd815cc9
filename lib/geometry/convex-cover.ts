import { getConvexHull } from './convex'
import type { Point, Polygon } from './point'
import { getAreaUm2 } from './polygon'
import { triangulate } from './triangulate'

/** Convex pieces that together hold a whole outline, and how much more than it they hold. */
export interface ConvexCover {
  readonly pieces: readonly Polygon[]
  /** At most this share of the outline's area lies in the pieces and not in the outline; 0 is exact. */
  readonly excessFraction: number
}

export interface CoverOptions {
  /** Pieces are joined until there are no more than this. */
  readonly maxPieces: number
  /** Joins go on while all of them together add no more than this share of the area. */
  readonly allowedExcessFraction: number
}

/**
 * Covers a simple polygon by convex pieces: triangles, joined to the hull of two neighbours where that adds least
 * (nothing at all as long as the union is convex, as Hertel and Mehlhorn 1983 join them). What the pieces add lies outside
 * the outline, so whatever keeps clear of the pieces keeps clear of the outline: the error is on the safe side.
 *
 * @param polygon  as `tidy` gives it
 */
export function coverByConvex(polygon: Polygon, { maxPieces, allowedExcessFraction }: CoverOptions): ConvexCover {
  const areaUm2 = getAreaUm2(polygon)
  const pieces = new Map<number, Polygon>(triangulate(polygon).map((triangle, id) => [id, triangle]))
  const neighbours = findNeighbours(pieces)
  const joins = new Map<string, Join>()
  const addJoins = (id: number) => {
    for (const other of neighbours.get(id) ?? []) joins.set(keyOf(id, other), makeJoin(pieces, id, other))
  }
  for (const id of pieces.keys()) addJoins(id)
  let excessUm2 = 0
  let nextId = pieces.size
  for (;;) {
    const best = findCheapest(joins)
    if (best === null) break
    const isAffordable = excessUm2 + best.addedUm2 <= allowedExcessFraction * areaUm2
    if (!isAffordable && pieces.size <= maxPieces) break
    excessUm2 += best.addedUm2
    const around = new Set([...(neighbours.get(best.a) ?? []), ...(neighbours.get(best.b) ?? [])])
    around.delete(best.a)
    around.delete(best.b)
    for (const old of [best.a, best.b]) {
      for (const other of neighbours.get(old) ?? []) {
        joins.delete(keyOf(old, other))
        neighbours.get(other)?.delete(old)
      }
      pieces.delete(old)
      neighbours.delete(old)
    }
    pieces.set(nextId, best.hull)
    neighbours.set(nextId, around)
    for (const other of around) neighbours.get(other)?.add(nextId)
    addJoins(nextId)
    nextId += 1
  }
  return { pieces: [...pieces.values()], excessFraction: areaUm2 === 0 ? 0 : excessUm2 / areaUm2 }
}

interface Join {
  readonly a: number
  readonly b: number
  readonly hull: Polygon
  readonly addedUm2: number
}

function makeJoin(pieces: ReadonlyMap<number, Polygon>, a: number, b: number): Join {
  const [one = [], other = []] = [pieces.get(a), pieces.get(b)]
  const hull = getConvexHull([...one, ...other])
  const addedUm2 = Math.max(0, getAreaUm2(hull) - getAreaUm2(one) - getAreaUm2(other))
  return { a, b, hull, addedUm2 }
}

/** Of equally cheap ones the first that was found, so that the cover is the same on every run. */
function findCheapest(joins: ReadonlyMap<string, Join>): Join | null {
  let best: Join | null = null
  for (const join of joins.values()) if (best === null || join.addedUm2 < best.addedUm2) best = join
  return best
}

function findNeighbours(triangles: ReadonlyMap<number, Polygon>): Map<number, Set<number>> {
  const owners = new Map<string, number>()
  const neighbours = new Map<number, Set<number>>([...triangles.keys()].map((id) => [id, new Set()]))
  for (const [id, triangle] of triangles) {
    triangle.forEach((from, index) => {
      const to = triangle[(index + 1) % triangle.length] ?? from
      const other = owners.get(edgeKey(from, to))
      if (other === undefined) owners.set(edgeKey(from, to), id)
      else {
        neighbours.get(id)?.add(other)
        neighbours.get(other)?.add(id)
      }
    })
  }
  return neighbours
}

const keyOf = (a: number, b: number): string => (a < b ? `${a}/${b}` : `${b}/${a}`)

function edgeKey(a: Point, b: Point): string {
  const [one, other] = [`${a[0]},${a[1]}`, `${b[0]},${b[1]}`]
  return one < other ? `${one}/${other}` : `${other}/${one}`
}
