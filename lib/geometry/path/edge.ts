import { crossOf, type PointNm } from '../predicates'

/** A straight way between two different points. */
export interface LineEdge {
  readonly kind: 'line'
  readonly from: PointNm
  readonly to: PointNm
}

/**
 * An arc through three whole points: they alone say where it runs, so that which side of it a point lies on is decided exactly.
 * Centre, radius and angles follow from them in doubles, for measures.
 */
export interface ArcEdge {
  readonly kind: 'arc'
  readonly from: PointNm
  readonly through: PointNm
  readonly to: PointNm
  readonly centre: readonly [x: number, y: number]
  readonly radiusNm: number
  readonly startRad: number
  /** Positive counter-clockwise. */
  readonly sweepRad: number
}

export type LineOrArc = LineEdge | ArcEdge

export const FULL_TURN_RAD = 2 * Math.PI

export function makeLine(from: PointNm, to: PointNm): LineEdge {
  return { kind: 'line', from, to }
}

/** Flatter arcs are lines to any shop, and their centres are lost in rounding: 100 m. */
export const MAX_RADIUS_NM = 1e11

/** @returns null where the three points are in line, or as good as (see MAX_RADIUS_NM), or two of them are one */
export function makeArc(from: PointNm, through: PointNm, to: PointNm): ArcEdge | null {
  const cross = crossOf(from, through, to)
  if (cross === 0) return null
  const [bx, by] = [through[0] - from[0], through[1] - from[1]]
  const [cx, cy] = [to[0] - from[0], to[1] - from[1]]
  const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy]
  const [ux, uy] = [(cy * b2 - by * c2) / (2 * cross), (bx * c2 - cx * b2) / (2 * cross)]
  const radiusNm = Math.hypot(ux, uy)
  if (radiusNm > MAX_RADIUS_NM) return null
  const centre = [from[0] + ux, from[1] + uy] as const
  const startRad = Math.atan2(-uy, -ux)
  const endRad = Math.atan2(cy - uy, cx - ux)
  const leftRad = normalise(endRad - startRad)
  return {
    kind: 'arc',
    from,
    through,
    to,
    centre,
    radiusNm,
    startRad,
    sweepRad: cross > 0 ? leftRad : leftRad - FULL_TURN_RAD,
  }
}

/** Into 0 (excluded) to a full turn. */
function normalise(rad: number): number {
  const turned = rad % FULL_TURN_RAD
  return turned <= 0 ? turned + FULL_TURN_RAD : turned
}

/** @throws RangeError where the way through `via` is no arc: documents are checked before */
export function makeEdge(from: PointNm, via: PointNm | null, to: PointNm): LineOrArc {
  if (via === null) return makeLine(from, to)
  const arc = makeArc(from, via, to)
  if (arc === null) throw new RangeError(`no arc from ${from} through ${via} to ${to}`)
  return arc
}

/**
 * At most a half circle, as every arc of a document is: seen from the through-point, both ends then lie at a right angle or more
 * (Thales). A half circle on a slant has no whole through-point, so the rounding of one is allowed for.
 */
export function isAtMostHalf({ from, through, to }: Pick<ArcEdge, 'from' | 'through' | 'to'>): boolean {
  const [ax, ay] = [from[0] - through[0], from[1] - through[1]]
  const [bx, by] = [to[0] - through[0], to[1] - through[1]]
  return ax * bx + ay * by <= 2 * (Math.hypot(ax, ay) + Math.hypot(bx, by))
}

/** Where an edge is, from 0 at its start to 1 at its end, unrounded. */
export function pointAt(edge: LineOrArc, share: number): readonly [number, number] {
  if (edge.kind === 'line') {
    return [edge.from[0] + share * (edge.to[0] - edge.from[0]), edge.from[1] + share * (edge.to[1] - edge.from[1])]
  }
  const rad = edge.startRad + share * edge.sweepRad
  return [edge.centre[0] + edge.radiusNm * Math.cos(rad), edge.centre[1] + edge.radiusNm * Math.sin(rad)]
}

/** Share of an arc's sweep at a direction from its centre; beyond 1 where the arc does not reach it. */
export function shareAtAngle(arc: ArcEdge, rad: number): number {
  const gone = arc.sweepRad > 0 ? rad - arc.startRad : arc.startRad - rad
  const turned = ((gone % FULL_TURN_RAD) + FULL_TURN_RAD) % FULL_TURN_RAD
  return turned / Math.abs(arc.sweepRad)
}

export function lengthOfEdge(edge: LineOrArc): number {
  return edge.kind === 'line'
    ? Math.hypot(edge.to[0] - edge.from[0], edge.to[1] - edge.from[1])
    : edge.radiusNm * Math.abs(edge.sweepRad)
}

/** Direction of travel at a share of the edge, of length 1. */
export function directionAt(edge: LineOrArc, share: number): readonly [number, number] {
  if (edge.kind === 'line') {
    const length = lengthOfEdge(edge)
    return [(edge.to[0] - edge.from[0]) / length, (edge.to[1] - edge.from[1]) / length]
  }
  const rad = edge.startRad + share * edge.sweepRad
  return edge.sweepRad > 0 ? [-Math.sin(rad), Math.cos(rad)] : [Math.sin(rad), -Math.cos(rad)]
}

export function reverseEdge(edge: LineOrArc): LineOrArc {
  return edge.kind === 'line'
    ? makeLine(edge.to, edge.from)
    : {
        ...edge,
        from: edge.to,
        to: edge.from,
        startRad: edge.startRad + edge.sweepRad,
        sweepRad: -edge.sweepRad,
      }
}

export const roundPoint = ([x, y]: readonly [number, number]): PointNm => [Math.round(x) + 0, Math.round(y) + 0]

export const isSamePoint = (a: PointNm, b: PointNm): boolean => a[0] === b[0] && a[1] === b[1]
