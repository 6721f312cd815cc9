import { sideOfLine } from '../predicates'
import { type ArcEdge, isSamePoint, type LineEdge, type LineOrArc, shareAtAngle } from './edge'

/**
 * Where two edges have a point in common, its share of each, and how they meet. Straight edges are decided exactly. With an arc the
 * point is irrational: two that come within CONTACT_NM of each other without more touch, and are not said to cross.
 */
export interface Meeting {
  readonly kind: 'cross' | 'touch' | 'overlap'
  readonly point: readonly [number, number]
  readonly onFirst: number
  readonly onSecond: number
}

/** Whole through-points put an arc up to 1 nm off its true place: contact nearer than twice that is contact. */
export const CONTACT_NM = 2

export function crossEdges(first: LineOrArc, second: LineOrArc): Meeting[] {
  if (first.kind === 'line') return second.kind === 'line' ? crossLines(first, second) : crossLineArc(first, second)
  return second.kind === 'line' ? crossLineArc(second, first).map(swap) : crossArcs(first, second)
}

const swap = (meeting: Meeting): Meeting => ({
  ...meeting,
  onFirst: meeting.onSecond,
  onSecond: meeting.onFirst,
})

function crossLines(first: LineEdge, second: LineEdge): Meeting[] {
  const [a, b, c, d] = [first.from, first.to, second.from, second.to]
  const [abc, abd] = [sideOfLine(a, b, c), sideOfLine(a, b, d)]
  const [cda, cdb] = [sideOfLine(c, d, a), sideOfLine(c, d, b)]
  if (abc === 0 && abd === 0) return meetInLine(first, second)
  if (abc * abd > 0 || cda * cdb > 0) return []
  // An end on the other edge is that very point.
  if (abc === 0) return [{ kind: 'touch', point: c, onFirst: shareOnLine(first, c), onSecond: 0 }]
  if (abd === 0) return [{ kind: 'touch', point: d, onFirst: shareOnLine(first, d), onSecond: 1 }]
  if (cda === 0) return [{ kind: 'touch', point: a, onFirst: 0, onSecond: shareOnLine(second, a) }]
  if (cdb === 0) return [{ kind: 'touch', point: b, onFirst: 1, onSecond: shareOnLine(second, b) }]
  const [rx, ry] = [b[0] - a[0], b[1] - a[1]]
  const [sx, sy] = [d[0] - c[0], d[1] - c[1]]
  const share = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / (rx * sy - ry * sx)
  const point = [a[0] + share * rx, a[1] + share * ry] as const
  return [{ kind: 'cross', point, onFirst: share, onSecond: shareOnLine(second, point) }]
}

function meetInLine(first: LineEdge, second: LineEdge): Meeting[] {
  const [c, d] = [shareOnLine(first, second.from), shareOnLine(first, second.to)]
  const [low, high] = [Math.max(0, Math.min(c, d)), Math.min(1, Math.max(c, d))]
  if (low > high) return []
  const at = (share: number): Meeting['point'] =>
    share === c ? second.from : share === d ? second.to : share === 0 ? first.from : first.to
  const kind = low < high ? 'overlap' : 'touch'
  return [...new Set([low, high])].map((share) => ({
    kind,
    point: at(share),
    onFirst: share,
    onSecond: shareOnLine(second, at(share)),
  }))
}

/** Share of a line at the foot of a point; exact at its ends. */
export function shareOnLine({ from, to }: LineEdge, point: readonly [number, number]): number {
  if (point[0] === to[0] && point[1] === to[1]) return 1
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return ((point[0] - from[0]) * dx + (point[1] - from[1]) * dy) / (dx * dx + dy * dy)
}

function crossLineArc(line: LineEdge, arc: ArcEdge): Meeting[] {
  const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]]
  const length = Math.hypot(dx, dy)
  const [ux, uy] = [dx / length, dy / length]
  const [cx, cy] = [arc.centre[0] - line.from[0], arc.centre[1] - line.from[1]]
  const foot = cx * ux + cy * uy
  const off = Math.abs(cx * uy - cy * ux)
  const depth = arc.radiusNm - off
  const ends = sharedEnds(line, arc)
  if (depth < -CONTACT_NM) return ends
  if (Math.abs(depth) <= CONTACT_NM) {
    const [found] = within(line, length, arc, [[foot * ux + line.from[0], foot * uy + line.from[1]]])
    return found === undefined
      ? ends
      : isNearAny(found, ends, 2 * Math.sqrt(2 * arc.radiusNm * CONTACT_NM))
        ? ends
        : [{ ...found, kind: 'touch' }, ...ends]
  }
  const half = Math.sqrt(arc.radiusNm ** 2 - off ** 2)
  const points = [foot - half, foot + half].map((at): [number, number] => [
    line.from[0] + at * ux,
    line.from[1] + at * uy,
  ])
  return [...ends, ...within(line, length, arc, points).filter((found) => !isNearAny(found, ends, 2 * CONTACT_NM))]
}

function crossArcs(first: ArcEdge, second: ArcEdge): Meeting[] {
  const [dx, dy] = [second.centre[0] - first.centre[0], second.centre[1] - first.centre[1]]
  const apart = Math.hypot(dx, dy)
  const [r, s] = [first.radiusNm, second.radiusNm]
  const ends = sharedEnds(first, second)
  if (apart <= CONTACT_NM && Math.abs(r - s) <= CONTACT_NM) return overlapOfArcs(first, second, ends)
  if (apart > r + s + CONTACT_NM || apart < Math.abs(r - s) - CONTACT_NM) return ends
  const along = (apart ** 2 + r ** 2 - s ** 2) / (2 * apart)
  const [ux, uy] = [dx / apart, dy / apart]
  const isTangent = apart > r + s - CONTACT_NM || apart < Math.abs(r - s) + CONTACT_NM
  const half = isTangent ? 0 : Math.sqrt(Math.max(0, r ** 2 - along ** 2))
  const reach = isTangent ? Math.sign(along) * r : along
  const points = (isTangent ? [0] : [half, -half]).map((side): [number, number] => [
    first.centre[0] + reach * ux - side * uy,
    first.centre[1] + reach * uy + side * ux,
  ])
  const near = isTangent ? 4 * Math.sqrt(2 * Math.min(r, s) * CONTACT_NM) : 2 * CONTACT_NM
  const found = points.flatMap((point): Meeting[] => {
    const [onFirst, onSecond] = [shareOnArc(first, point), shareOnArc(second, point)]
    return onFirst === null || onSecond === null
      ? []
      : [{ kind: isTangent ? 'touch' : kindAt(onFirst, onSecond), point, onFirst, onSecond }]
  })
  return [...ends, ...found.filter((meeting) => !isNearAny(meeting, ends, near))]
}

function overlapOfArcs(first: ArcEdge, second: ArcEdge, ends: Meeting[]): Meeting[] {
  const onFirst = [second.from, second.to].flatMap((point): Meeting[] => {
    const share = shareOnArc(first, point)
    return share === null ? [] : [{ kind: 'touch', point, onFirst: share, onSecond: point === second.from ? 0 : 1 }]
  })
  const onSecond = [first.from, first.to].flatMap((point): Meeting[] => {
    const share = shareOnArc(second, point)
    return share === null ? [] : [{ kind: 'touch', point, onFirst: point === first.from ? 0 : 1, onSecond: share }]
  })
  const all = [...ends, ...onFirst, ...onSecond].filter(
    (one, at, list) => list.findIndex((other) => isNearAny(one, [other], CONTACT_NM)) === at,
  )
  // They run together where a point between two meetings lies on both.
  const sorted = all.sort((one, other) => one.onFirst - other.onFirst)
  const runsTogether = sorted.some((one, at) => {
    const next = sorted[at + 1]
    if (next === undefined) return false
    const rad = first.startRad + ((one.onFirst + next.onFirst) / 2) * first.sweepRad
    return shareAtAngle(second, rad) <= 1
  })
  return runsTogether ? sorted.map((meeting) => ({ ...meeting, kind: 'overlap' })) : sorted
}

/** Ends that are one and the same whole point. */
function sharedEnds(first: LineOrArc, second: LineOrArc): Meeting[] {
  const found: Meeting[] = []
  for (const [point, onFirst] of [
    [first.from, 0],
    [first.to, 1],
  ] as const) {
    if (isSamePoint(point, second.from)) found.push({ kind: 'touch', point, onFirst, onSecond: 0 })
    else if (isSamePoint(point, second.to)) found.push({ kind: 'touch', point, onFirst, onSecond: 1 })
  }
  return found
}

function within(
  line: LineEdge,
  length: number,
  arc: ArcEdge,
  points: readonly (readonly [number, number])[],
): Meeting[] {
  return points.flatMap((point): Meeting[] => {
    const share = shareOnLine(line, point)
    const slack = CONTACT_NM / length
    if (share < -slack || share > 1 + slack) return []
    const onSecond = shareOnArc(arc, point)
    if (onSecond === null) return []
    const onFirst = share < slack ? 0 : share > 1 - slack ? 1 : share
    return [{ kind: kindAt(onFirst, onSecond), point, onFirst, onSecond }]
  })
}

/** Ends count as touching. */
const kindAt = (onFirst: number, onSecond: number): 'cross' | 'touch' =>
  onFirst === 0 || onFirst === 1 || onSecond === 0 || onSecond === 1 ? 'touch' : 'cross'

/** Share of an arc at a point that lies on its circle; null where the arc does not reach it. */
export function shareOnArc(arc: ArcEdge, point: readonly [number, number]): number | null {
  const share = shareAtAngle(arc, Math.atan2(point[1] - arc.centre[1], point[0] - arc.centre[0]))
  const slack = CONTACT_NM / (arc.radiusNm * Math.abs(arc.sweepRad))
  const full = (2 * Math.PI) / Math.abs(arc.sweepRad)
  if (share < slack || share > full - slack) return 0
  if (share > 1 + slack) return null
  return share > 1 - slack ? 1 : share
}

function isNearAny({ point }: Meeting, others: readonly Meeting[], nearNm: number): boolean {
  return others.some((other) => Math.hypot(other.point[0] - point[0], other.point[1] - point[1]) <= nearNm)
}
