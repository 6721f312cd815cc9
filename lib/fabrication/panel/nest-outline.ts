import {
  at,
  type ConvexCover,
  coverByConvex,
  getAreaUm2,
  makeNoFit,
  type Polygon,
  type QuarterTurnDeg,
} from '@/lib/geometry'
import { clipLattice, countRows, type Row } from './lattice'
import { type Found, type SearchTask, searchLattices } from './lattice-search'
import { type Placement, turnPart } from './placement'

/** More pieces make an outline no better nested, only slower: beyond this neighbours are joined to their hulls. */
const MAX_PIECES = 28
/** Joins may add this share of the area: less than the width of a routed cut round a part of a few square centimetres. */
const ALLOWED_EXCESS_FRACTION = 0.002
/** Corners of an outline whose differences in height are all tried. */
const MAX_CORNERS_COMPARED = 16

export interface OutlineTask {
  /** Counter-clockwise, simple. */
  readonly outline: Polygon
  readonly usableWidthUm: number
  readonly usableHeightUm: number
  readonly spacingUm: number
  readonly turnsDeg: readonly QuarterTurnDeg[]
}

export interface OutlineNesting {
  /** From the lower left corner of the usable area. */
  readonly placements: readonly Placement[]
  /** Share of the part's area that was added to keep the shapes simple enough; no part is nearer than the clearance. */
  readonly excessFraction: number
  /** Two lattices side by side, one of them turned by a quarter. */
  readonly isInTwoBlocks: boolean
}

/** Lattices of one pair of turns, ready to be clipped to any room. */
interface Way {
  readonly turnsDeg: readonly [QuarterTurnDeg, QuarterTurnDeg | null]
  readonly widthUm: number
  readonly heightUm: number
  readonly lattices: readonly Found[]
}

/**
 * Parts on a panel by their true outline: double lattices of the part and its turn by half, upright and across, and pairs
 * of an upright and an across one in two blocks where both are allowed.
 *
 * @param outline  as `tidy` gives it
 */
export function nestOutline(task: OutlineTask): OutlineNesting {
  const cover = coverByConvex(task.outline, { maxPieces: MAX_PIECES, allowedExcessFraction: ALLOWED_EXCESS_FRACTION })
  const ways = (
    [
      [0, 180],
      [90, 270],
    ] as const
  ).flatMap((pair) => {
    const turns = pair.filter((turn) => task.turnsDeg.includes(turn))
    const [first, second] = turns
    return first === undefined ? [] : [findWay(task, cover, first, second ?? null)]
  })
  let placements: readonly Placement[] = []
  for (const way of ways) {
    const best = way.lattices[0]
    if (best !== undefined && best.count > placements.length) placements = toPlacements(way, best.rows, 0, 0)
  }
  const split = findBestSplit(task, ways, placements.length)
  return { placements: split ?? placements, excessFraction: cover.excessFraction, isInTwoBlocks: split !== null }
}

function findWay(task: OutlineTask, cover: ConvexCover, first: QuarterTurnDeg, second: QuarterTurnDeg | null): Way {
  const part = turnPart(task.outline, first)
  const { pieces, other } = turnPieces(task.outline, cover, first)
  const rules = {
    alike: makeNoFit(pieces, pieces, task.spacingUm),
    turned: second === null ? null : makeNoFit(pieces, other, task.spacingUm),
  }
  const room = { widthUm: task.usableWidthUm - part.widthUm, heightUm: task.usableHeightUm - part.heightUm }
  const search: SearchTask = {
    rules,
    room,
    partWidthUm: part.widthUm,
    partHeightUm: part.heightUm,
    areaUm2: getAreaUm2(part.outline),
    spacingUm: task.spacingUm,
    corners: listCornerHeights(part.outline, part.heightUm, task.spacingUm),
  }
  const lattices = room.widthUm < 0 || room.heightUm < 0 ? [] : searchLattices(search)
  return { turnsDeg: [first, second], widthUm: part.widthUm, heightUm: part.heightUm, lattices }
}

/** Pieces of the part in one turn, and of its half turn, both with the bounds of the outline beginning at 0, 0. */
function turnPieces(
  outline: Polygon,
  cover: ConvexCover,
  turnDeg: QuarterTurnDeg,
): { pieces: Polygon[]; other: Polygon[] } {
  // The outline's bounds move with the pieces: both are turned as one list of points, so that they stay together.
  const all = [...outline, ...cover.pieces.flat()]
  const turned = turnPart(all, turnDeg)
  let next = outline.length
  const pieces = cover.pieces.map((piece) => {
    const own = turned.outline.slice(next, next + piece.length)
    next += piece.length
    return own
  })
  const other = pieces.map((piece) => piece.map(([x, y]) => [turned.widthUm - x, turned.heightUm - y] as const))
  return { pieces, other }
}

function listCornerHeights(outline: Polygon, heightUm: number, spacingUm: number): SearchTask['corners'] {
  const levels = [...new Set(outline.map(([, y]) => y))]
  if (levels.length > MAX_CORNERS_COMPARED) return { alike: everyHeight, turned: everyHeight }
  const alike: number[] = []
  const turned: number[] = []
  for (const one of levels) {
    for (const other of levels) {
      for (const clearance of spacingUm === 0 ? [0] : [-spacingUm, 0, spacingUm]) {
        alike.push(one - other + clearance)
        turned.push(one + other - heightUm + clearance)
      }
    }
  }
  return { alike, turned }
}

/** Too many to be worth a list of their own: the search then takes its grid. */
const everyHeight: readonly number[] = Array.from({ length: 200 }, (_, index) => index)

function toPlacements({ turnsDeg: [first, second] }: Way, rows: readonly Row[], dx: number, dy: number): Placement[] {
  return rows.flatMap((row) =>
    Array.from({ length: row.count }, (_, index) => ({
      xUm: dx + row.xUm + index * row.pitchUm,
      yUm: dy + row.yUm,
      rotationDeg: row.isTurned ? (second ?? first) : first,
    })),
  )
}

/** Lattices of each way that are tried in blocks. */
const SPLIT_LATTICES = 6

/** The panel cut in two: one way of the part below or left of the cut, another beyond it. Null where that gains nothing. */
function findBestSplit(task: OutlineTask, ways: readonly Way[], leastCount: number): readonly Placement[] | null {
  let best: readonly Placement[] | null = null
  let bestCount = leastCount
  for (const one of ways) {
    for (const other of ways) {
      if (one === other) continue
      for (const isAcross of [false, true]) {
        for (const { first, second, offset } of listSplits(task, one, other, isAcross)) {
          const count = countRows(first) + countRows(second)
          if (count <= bestCount) continue
          bestCount = count
          const [dx, dy] = isAcross ? [offset, 0] : [0, offset]
          best = [...toPlacements(one, first, 0, 0), ...toPlacements(other, second, dx, dy)]
        }
      }
    }
  }
  return best
}

function* listSplits(task: OutlineTask, one: Way, other: Way, isAcross: boolean) {
  for (const { lattice } of one.lattices.slice(0, SPLIT_LATTICES)) {
    const whole = clipLattice(lattice, roomFor(task, one, isAcross, 0))
    for (const extent of listExtents(whole, one, isAcross)) {
      const usedUm = extent + task.spacingUm
      const first = clipLattice(lattice, {
        widthUm: (isAcross ? extent : task.usableWidthUm) - one.widthUm,
        heightUm: (isAcross ? task.usableHeightUm : extent) - one.heightUm,
      })
      for (const { lattice: second } of other.lattices.slice(0, SPLIT_LATTICES)) {
        yield { first, second: clipLattice(second, roomFor(task, other, isAcross, usedUm)), offset: usedUm }
      }
    }
  }
}

function roomFor(task: OutlineTask, way: Way, isAcross: boolean, usedUm: number) {
  return {
    widthUm: task.usableWidthUm - way.widthUm - (isAcross ? usedUm : 0),
    heightUm: task.usableHeightUm - way.heightUm - (isAcross ? 0 : usedUm),
  }
}

/** Where a block of whole rows, or of whole columns, ends. */
function listExtents(rows: readonly Row[], way: Way, isAcross: boolean): number[] {
  const extents = new Set<number>()
  for (const row of rows) {
    if (!isAcross) extents.add(row.yUm + way.heightUm)
    else for (let index = 0; index < row.count; index += 1) extents.add(row.xUm + index * row.pitchUm + way.widthUm)
  }
  const sorted = [...extents].sort((a, b) => a - b)
  const most = 24
  return sorted.length <= most
    ? sorted
    : Array.from({ length: most }, (_, index) => at(sorted, Math.round((index * (sorted.length - 1)) / (most - 1))))
}
