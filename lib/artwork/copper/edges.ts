import type { Islands } from './islands'
import { BoxIndex } from './tile-index'

/** Distances are looked for up to this; what lies farther is far for any circuit's etching. */
export const FAR_NM = 250_000

/** Edges of a layer's copper in flat arrays, cuts between tiles left out, found by place. */
export class CopperEdges {
  readonly count: number
  /** x, y of both ends of each edge. */
  readonly ends: Float64Array
  readonly islands: Int32Array
  /** The edge that goes on where one ends, over cuts between tiles too; -1 where none does. */
  readonly next: Int32Array
  readonly #index = new BoxIndex(FAR_NM)

  constructor(islands: Islands) {
    const ends: number[] = []
    const owners: number[] = []
    const following: number[] = []
    for (const { extentNm, borders } of islands.tiles) {
      const [minX, minY, maxX, maxY] = extentNm
      for (const { path, piece } of borders) {
        const island = islands.islandOf(piece)
        let first = -1
        let last = -1
        for (let at = 0; at < path.length; at += 2) {
          const next = (at + 2) % path.length
          const [ax = 0, ay = 0, bx = 0, by = 0] = [path[at], path[at + 1], path[next], path[next + 1]]
          const isCut = (ax === bx && (ax === minX || ax === maxX)) || (ay === by && (ay === minY || ay === maxY))
          if (isCut) {
            last = -1
            continue
          }
          const edge = owners.length
          if (last >= 0) following[last] = edge
          if (at === 0) first = edge
          last = edge
          following.push(-1)
          alongChunks(ax, ay, bx, by, (...box) => this.#index.add(edge, box))
          ends.push(ax, ay, bx, by)
          owners.push(island)
        }
        // The border closes where neither its first edge nor its last is a cut.
        if (first >= 0 && last >= 0) following[last] = first
      }
    }
    this.count = owners.length
    this.ends = Float64Array.from(ends)
    this.islands = Int32Array.from(owners)
    this.next = joinOverCuts(this.ends, Int32Array.from(following))
  }

  /** Edges that may lie within a distance of a place. */
  near(x: number, y: number, withinNm: number, take: (edge: number) => void): void {
    this.#index.near(x - withinNm, y - withinNm, x + withinNm, y + withinNm, take)
  }

  /** Edges whose box comes within a distance of an edge's. */
  nearEdge(edge: number, withinNm: number, take: (other: number) => void): void {
    const [ax = 0, ay = 0, bx = 0, by = 0] = this.ends.subarray(4 * edge, 4 * edge + 4)
    alongChunks(ax, ay, bx, by, (minX, minY, maxX, maxY) =>
      this.#index.near(minX - withinNm, minY - withinNm, maxX + withinNm, maxY + withinNm, take),
    )
  }

  distanceTo(edge: number, x: number, y: number): number {
    const [ax = 0, ay = 0, bx = 0, by = 0] = this.ends.subarray(4 * edge, 4 * edge + 4)
    return Math.hypot(...toSegment(x, y, ax, ay, bx, by))
  }
}

/** Two tiles round the same crossing of a border with their cut apart from each other by no more than this. */
const SAME_CROSSING_NM = 4

/** Borders are followed from one tile into the next: an edge that ends at a cut goes on with the one that begins there. */
function joinOverCuts(ends: Float64Array, next: Int32Array): Int32Array {
  const isFollowing = new Uint8Array(next.length)
  for (const edge of next) if (edge >= 0) isFollowing[edge] = 1
  const starts = new Map<string, number[]>()
  const cellOf = (value: number) => Math.floor(value / SAME_CROSSING_NM)
  for (let edge = 0; edge < next.length; edge += 1) {
    if (isFollowing[edge] === 1) continue
    const key = `${cellOf(ends[4 * edge] ?? 0)} ${cellOf(ends[4 * edge + 1] ?? 0)}`
    const there = starts.get(key)
    if (there === undefined) starts.set(key, [edge])
    else there.push(edge)
  }
  for (let edge = 0; edge < next.length; edge += 1) {
    if (next[edge] !== -1) continue
    const [x = 0, y = 0] = ends.subarray(4 * edge + 2, 4 * edge + 4)
    let nearest = SAME_CROSSING_NM
    for (let i = cellOf(x) - 1; i <= cellOf(x) + 1; i += 1)
      for (let j = cellOf(y) - 1; j <= cellOf(y) + 1; j += 1)
        for (const other of starts.get(`${i} ${j}`) ?? []) {
          const off = Math.hypot((ends[4 * other] ?? 0) - x, (ends[4 * other + 1] ?? 0) - y)
          if (off > nearest || other === edge) continue
          nearest = off
          next[edge] = other
        }
  }
  return next
}

/** Boxes of short pieces of an edge: that of a long slanting one would cover cells by the thousand. */
function alongChunks(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  take: (minX: number, minY: number, maxX: number, maxY: number) => void,
): void {
  const count = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / (2 * FAR_NM)))
  for (let at = 0; at < count; at += 1) {
    const [x0, y0] = [ax + ((bx - ax) * at) / count, ay + ((by - ay) * at) / count]
    const [x1, y1] = [ax + ((bx - ax) * (at + 1)) / count, ay + ((by - ay) * (at + 1)) / count]
    take(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1))
  }
}

/** From a place to the nearest point of a segment. */
export function toSegment(
  x: number,
  y: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): readonly [number, number] {
  const [dx, dy] = [bx - ax, by - ay]
  const square = dx * dx + dy * dy
  const share = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square))
  return [ax + share * dx - x, ay + share * dy - y]
}
