import {
  boundsOf,
  clipToBand,
  crossEdges,
  type LineOrArc,
  locateInRegion,
  makeLine,
  nearestOnEdge,
  type Path,
  type PointNm,
  pointAt,
  type Region,
  roundPoint,
} from '@/lib/geometry'

/** A bend's axis in nanometres, and the band round it. */
export interface BandLine {
  readonly from: PointNm
  readonly to: PointNm
  readonly halfWidthNm: number
}

/** A border within this of a dividing line is that line: 1 um, as dividing lines join. */
const SAME_LINE_NM = 1000

/** How far across the axis a point lies, to its left. */
export function acrossNm({ from, to }: BandLine, [x, y]: readonly [number, number]): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return ((y - from[1]) * dx - (x - from[0]) * dy) / Math.hypot(dx, dy)
}

export const middleOf = ({ from, to }: Pick<BandLine, 'from' | 'to'>): PointNm => [
  Math.round((from[0] + to[0]) / 2),
  Math.round((from[1] + to[1]) / 2),
]

/** What of an area the band of a bend covers: each piece that the axis runs through between its ends, on both sides of a window. */
export function findBandPieces(area: Region, line: BandLine): readonly Region[] {
  // Most areas are elsewhere: clipping each of them took most of the time.
  if (listStretches(area, line).length === 0) return []
  return clipToBand(area, line).filter((piece) => listStretches(piece, line).length > 0)
}

/** Middles of the stretches of the axis that lie in a region. */
function listStretches(region: Region, { from, to }: BandLine): readonly PointNm[] {
  const axis = makeLine(from, to)
  const { minX, minY, maxX, maxY } = boundsOf(region.outer)
  if (Math.max(from[0], to[0]) < minX || Math.min(from[0], to[0]) > maxX) return []
  if (Math.max(from[1], to[1]) < minY || Math.min(from[1], to[1]) > maxY) return []
  const shares = [
    0,
    1,
    ...[...region.outer, ...region.holes.flat()].flatMap((edge) =>
      crossEdges(axis, edge).map(({ onFirst }) => onFirst),
    ),
  ]
  const sorted = shares.filter((share) => share >= 0 && share <= 1).toSorted((a, b) => a - b)
  return sorted.slice(1).flatMap((share, at) => {
    const middle = roundPoint(pointAt(axis, (share + (sorted[at] ?? 0)) / 2))
    return locateInRegion(region, middle) === 'inside' ? [middle] : []
  })
}

/** The stretches of a band's two borders that cut the area; those that run along a line which cuts it already are left out. */
export function listBandBorders(piece: Region, line: BandLine, others: readonly LineOrArc[]): Path[] {
  return [...piece.outer, ...piece.holes.flat()].flatMap((edge): Path[] => {
    if (edge.kind === 'arc' || !isBorder(line, edge)) return []
    if (others.some((other) => [edge.from, middleOf(edge), edge.to].every((at) => isNear(other, at)))) return []
    return [
      [
        { at: edge.from, via: null },
        { at: edge.to, via: null },
      ],
    ]
  })
}

const isBorder = (line: BandLine, { from, to }: LineOrArc) =>
  [from, to].every((at) => Math.abs(Math.abs(acrossNm(line, at)) - line.halfWidthNm) <= SAME_LINE_NM) &&
  Math.sign(acrossNm(line, from)) === Math.sign(acrossNm(line, to))

function isNear(edge: LineOrArc, at: PointNm): boolean {
  return nearestOnEdge(edge, at).distanceNm <= SAME_LINE_NM
}

/** Which border of the band the stretch between two pieces is: -1 before the axis, 1 behind it, 0 neither. */
export function sideOf(line: BandLine, edges: readonly LineOrArc[]): -1 | 0 | 1 {
  const sides = edges.map((edge) => (isBorder(line, edge) ? Math.sign(acrossNm(line, edge.from)) : 0))
  if (sides.every((side) => side === -1)) return -1
  return sides.length > 0 && sides.every((side) => side === 1) ? 1 : 0
}
