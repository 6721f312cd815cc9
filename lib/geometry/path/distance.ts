import { crossEdges } from './cross'
import { type ArcEdge, type LineOrArc, shareAtAngle } from './edge'
import { nearestOnEdge } from './locate'

export interface Distance {
  readonly distanceNm: number
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
}

/** Least distance between two edges, 0 where they meet: at an end of one, or where the line of centres is square to both. */
export function distanceBetweenEdges(first: LineOrArc, second: LineOrArc): Distance {
  const [meeting] = crossEdges(first, second)
  if (meeting !== undefined) return { distanceNm: 0, from: meeting.point, to: meeting.point }
  let best: Distance | null = null
  const take = (found: Distance) => {
    if (best === null || found.distanceNm < best.distanceNm) best = found
  }
  for (const from of [first.from, first.to, ...squareTo(first, second)]) {
    const { point, distanceNm } = nearestOnEdge(second, from)
    take({ distanceNm, from, to: point })
  }
  for (const to of [second.from, second.to, ...squareTo(second, first)]) {
    const { point, distanceNm } = nearestOnEdge(first, to)
    take({ distanceNm, from: point, to })
  }
  return best ?? { distanceNm: Number.POSITIVE_INFINITY, from: first.from, to: second.from }
}

/** Points of an arc that may be nearest to another edge though they are no ends: towards the foot of its centre, or the other centre. */
function squareTo(edge: LineOrArc, other: LineOrArc): (readonly [number, number])[] {
  if (edge.kind === 'line') return []
  const target = other.kind === 'arc' ? other.centre : nearestOnEdge(other, edge.centre).point
  const rad = Math.atan2(target[1] - edge.centre[1], target[0] - edge.centre[0])
  return [rad, rad + Math.PI]
    .filter((towards) => shareAtAngle(edge, towards) <= 1)
    .map((towards) => onArc(edge, towards))
}

const onArc = (arc: ArcEdge, rad: number): readonly [number, number] => [
  arc.centre[0] + arc.radiusNm * Math.cos(rad),
  arc.centre[1] + arc.radiusNm * Math.sin(rad),
]

/** Least distance between two sets of edges. Pairs whose boxes are further apart than the best so far are passed over. */
export function distanceBetweenEdgeSets(first: readonly LineOrArc[], second: readonly LineOrArc[]): Distance | null {
  let best: Distance | null = null
  const boxes = second.map((edge) => ({ edge, box: looseBox(edge) }))
  for (const one of first) {
    const a = looseBox(one)
    for (const { edge, box: b } of boxes) {
      const dx = Math.max(0, a.minX - b.maxX, b.minX - a.maxX)
      const dy = Math.max(0, a.minY - b.maxY, b.minY - a.maxY)
      if (best !== null && Math.hypot(dx, dy) >= best.distanceNm) continue
      const found = distanceBetweenEdges(one, edge)
      if (best === null || found.distanceNm < best.distanceNm) best = found
      if (best.distanceNm === 0) return best
    }
  }
  return best
}

/** A box that holds the edge; that of an arc may be as large as its circle, cut to what its length can reach. */
export function looseBox(edge: LineOrArc): { minX: number; minY: number; maxX: number; maxY: number } {
  const [x1, y1] = edge.from
  const [x2, y2] = edge.to
  const box = { minX: Math.min(x1, x2), minY: Math.min(y1, y2), maxX: Math.max(x1, x2), maxY: Math.max(y1, y2) }
  if (edge.kind === 'line') return box
  const { centre, radiusNm } = edge
  // Of an arc up to a half circle no point is further from its chord's box than its sagitta.
  const sagitta = radiusNm * (1 - Math.cos(Math.abs(edge.sweepRad) / 2)) + 1
  return {
    minX: Math.max(box.minX - sagitta, Math.min(box.minX, centre[0] - radiusNm - 1)),
    minY: Math.max(box.minY - sagitta, Math.min(box.minY, centre[1] - radiusNm - 1)),
    maxX: Math.min(box.maxX + sagitta, Math.max(box.maxX, centre[0] + radiusNm + 1)),
    maxY: Math.min(box.maxY + sagitta, Math.max(box.maxY, centre[1] + radiusNm + 1)),
  }
}
