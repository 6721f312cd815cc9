import type { LayerShape } from '../shape/copper'
import { areaNm2, type FlatPath } from '../shape/path'
import { BoxIndex } from './tile-index'
import { UnionFind } from './union-find'

/** Tiles are found by cells of this size. */
const CELL_NM = 2_000_000

/** A closed border of what a layer covers within one tile. */
interface Border {
  readonly path: FlatPath
  readonly areaNm2: number
  /** Of the piece that it bounds: a piece's outer border, and the borders of its holes. */
  readonly piece: number
}

interface TileBorders {
  readonly extentNm: readonly [number, number, number, number]
  readonly borders: readonly Border[]
}

/** What a layer covers, as pieces of copper that hang together: tiles are cut for speed, and pieces are joined again over the cuts. */
export class Islands {
  readonly tiles: readonly TileBorders[]
  readonly pieceCount: number
  readonly #joined: UnionFind
  readonly #index = new BoxIndex(CELL_NM)

  constructor(shape: LayerShape) {
    let pieceCount = 0
    this.tiles = shape.tiles.map(({ extentNm, paths }): TileBorders => {
      const measured = paths.map((path) => ({ path, areaNm2: areaNm2(path) })).filter((each) => each.areaNm2 !== 0)
      const outers = measured
        .filter((each) => each.areaNm2 > 0)
        .map((each) => {
          pieceCount += 1
          return { ...each, piece: pieceCount - 1 }
        })
      const bySize = [...outers].sort((one, other) => one.areaNm2 - other.areaNm2)
      const holes = measured
        .filter((each) => each.areaNm2 < 0)
        .flatMap((hole): Border[] => {
          const owner = bySize.find((outer) => outer.areaNm2 > -hole.areaNm2 && holds(outer.path, hole.path))
          return owner === undefined ? [] : [{ ...hole, piece: owner.piece }]
        })
      return { extentNm, borders: [...outers, ...holes] }
    })
    this.pieceCount = pieceCount
    this.#joined = new UnionFind(pieceCount)
    for (const [at, { extentNm }] of this.tiles.entries()) this.#index.add(at, extentNm)
    this.#joinOverCuts()
  }

  /** The island of a piece: pieces of one island have the same. */
  islandOf(piece: number): number {
    return this.#joined.find(piece)
  }

  /** How many islands there are. */
  count(): number {
    const found = new Set<number>()
    for (const { borders } of this.tiles) for (const { piece } of borders) found.add(this.islandOf(piece))
    return found.size
  }

  /** The island at a place; null where there is no copper. On a border either answer may come. */
  at(x: number, y: number): number | null {
    let island: number | null = null
    this.#index.near(x, y, x, y, (tile) => {
      if (island !== null) return
      const { extentNm, borders } = this.tiles[tile] as TileBorders
      if (x < extentNm[0] || x > extentNm[2] || y < extentNm[1] || y > extentNm[3]) return
      let inner: Border | null = null
      for (const border of borders) {
        if (inner !== null && Math.abs(border.areaNm2) >= Math.abs(inner.areaNm2)) continue
        if (contains(border.path, x, y)) inner = border
      }
      if (inner !== null && inner.areaNm2 > 0) island = this.islandOf(inner.piece)
    })
    return island
  }

  /** Pieces whose borders run along a cut from both of its sides are one. */
  #joinOverCuts(): void {
    const cuts = new Map<string, Stretch[]>()
    for (const { extentNm, borders } of this.tiles) {
      for (const { path, piece } of borders) {
        for (let at = 0; at < path.length; at += 2) {
          const [ax = 0, ay = 0] = [path[at], path[at + 1]]
          const next = (at + 2) % path.length
          const [bx = 0, by = 0] = [path[next], path[next + 1]]
          const isUpright = ax === bx && (ax === extentNm[0] || ax === extentNm[2])
          const isLevel = ay === by && (ay === extentNm[1] || ay === extentNm[3])
          if (isUpright) note(cuts, `x${ax}`, ax === extentNm[0], Math.min(ay, by), Math.max(ay, by), piece)
          if (isLevel) note(cuts, `y${ay}`, ay === extentNm[1], Math.min(ax, bx), Math.max(ax, bx), piece)
        }
      }
    }
    for (const stretches of cuts.values()) {
      stretches.sort((one, other) => one.from - other.from)
      let open: Stretch[] = []
      for (const stretch of stretches) {
        open = open.filter(({ to }) => to > stretch.from)
        for (const other of open) if (other.isLow !== stretch.isLow) this.#joined.join(other.piece, stretch.piece)
        open.push(stretch)
      }
    }
  }
}

/** A border along a cut, with its tile on the low or the high side. */
interface Stretch {
  readonly isLow: boolean
  readonly from: number
  readonly to: number
  readonly piece: number
}

function note(
  cuts: Map<string, Stretch[]>,
  key: string,
  isLow: boolean,
  from: number,
  to: number,
  piece: number,
): void {
  if (from === to) return
  const stretches = cuts.get(key)
  const stretch = { isLow, from, to, piece }
  if (stretches === undefined) cuts.set(key, [stretch])
  else stretches.push(stretch)
}

/** Is a place inside of a closed path? By crossings of a ray to the right. */
export function contains(path: FlatPath, x: number, y: number): boolean {
  let isInside = false
  let ax = path[path.length - 2] ?? 0
  let ay = path[path.length - 1] ?? 0
  for (let at = 0; at + 1 < path.length; at += 2) {
    const bx = path[at] ?? 0
    const by = path[at + 1] ?? 0
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) isInside = !isInside
    ax = bx
    ay = by
  }
  return isInside
}

/** Does a path hold another that it does not cross? Their corners may touch: most of a few middles of edges decide. */
function holds(outer: FlatPath, inner: FlatPath): boolean {
  let votes = 0
  for (let at = 0, asked = 0; at + 3 < inner.length && asked < 3; at += 2, asked += 1) {
    const x = ((inner[at] ?? 0) + (inner[at + 2] ?? 0)) / 2
    const y = ((inner[at + 1] ?? 0) + (inner[at + 3] ?? 0)) / 2
    votes += contains(outer, x, y) ? 1 : -1
  }
  return votes > 0
}
