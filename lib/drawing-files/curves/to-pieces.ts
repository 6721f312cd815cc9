import type { Point } from './affine'
import { type Curve, type EllipseCurve, FULL_TURN_RAD, pointOfEllipse, pointOfSpline, type SplineCurve } from './curve'

/** A straight way, or the arc through a third point, at most a half circle. */
export interface Piece {
  readonly from: Point
  readonly via: Point | null
  readonly to: Point
}

/** What a drawing may come to: more than any plan can hold. */
export const MAX_PIECES = 200_000

/** Half axes this alike and square make a circle: what is left of the digits in a file. */
const CIRCLE_SHARE = 1e-7
/** Pieces of a curve are halved this often at most: 4096 to a span. */
const MAX_HALVINGS = 12

/**
 * Lines and arcs in place of a curve. Lines and circles come out as they are; ellipses and splines within `tolerance`, as probed at 15
 * places of each arc. Null where that would take too many.
 */
export function toPieces(curve: Curve, tolerance: number): Piece[] | null {
  switch (curve.kind) {
    case 'line':
      return [{ from: curve.from, via: null, to: curve.to }]
    case 'ellipse':
      return isCircle(curve) ? cutCircle(curve) : fitEllipse(curve, tolerance)
    case 'spline':
      return fitSpline(curve, tolerance)
  }
}

function fitSpline(curve: SplineCurve, tolerance: number): Piece[] | null {
  const pieces: Piece[] = []
  for (let span = curve.degree; span < curve.points.length; span += 1) {
    const [start, end] = [curve.knots[span] ?? 0, curve.knots[span + 1] ?? 0]
    if (!(start < end)) continue
    const at = (t: number) => pointOfSpline(curve, span, t)
    for (const piece of fitPieces(at, start, end, tolerance, 0)) pieces.push(piece)
    if (pieces.length > MAX_PIECES) return null
  }
  return pieces
}

export function isCircle({ u, v }: EllipseCurve): boolean {
  const [ru, rv] = [Math.hypot(...u), Math.hypot(...v)]
  const bound = CIRCLE_SHARE * Math.max(ru, rv)
  return Math.abs(ru - rv) <= bound && Math.abs(u[0] * v[0] + u[1] * v[1]) <= bound * Math.max(ru, rv)
}

/** Into halves at most; a half circle stays one. */
function cutCircle(curve: EllipseCurve): Piece[] {
  const count = Math.max(1, Math.ceil(Math.abs(curve.sweepRad) / Math.PI - 1e-9))
  return cutEvenly(curve, count).map(([startRad, endRad], index, all) => ({
    from: endOf(curve, startRad, index === 0 ? 0 : null),
    via: pointOfEllipse(curve, (startRad + endRad) / 2),
    to: endOf(curve, endRad, index === all.length - 1 ? 1 : null),
  }))
}

/** A full turn ends on the very point that it began from. */
function endOf(curve: EllipseCurve, rad: number, end: 0 | 1 | null): Point {
  if (end !== null && curve.ends !== null) return curve.ends[end]
  const isFull = end === 1 && Math.abs(Math.abs(curve.sweepRad) - FULL_TURN_RAD) < 1e-12
  return pointOfEllipse(curve, isFull ? curve.startRad : rad)
}

function cutEvenly({ startRad, sweepRad }: EllipseCurve, count: number): [number, number][] {
  return Array.from({ length: count }, (_, at) => [
    startRad + (sweepRad * at) / count,
    startRad + (sweepRad * (at + 1)) / count,
  ])
}

function fitEllipse(curve: EllipseCurve, tolerance: number): Piece[] {
  const count = Math.max(1, Math.ceil(Math.abs(curve.sweepRad) / (Math.PI / 2) - 1e-9))
  const pieces = cutEvenly(curve, count).flatMap(([start, end]) =>
    fitPieces((t) => pointOfEllipse(curve, t), start, end, tolerance, 0),
  )
  return pieces.map((piece, index) => ({
    ...piece,
    from: index === 0 ? endOf(curve, curve.startRad, 0) : piece.from,
    to: index === pieces.length - 1 ? endOf(curve, curve.startRad + curve.sweepRad, 1) : piece.to,
  }))
}

const PROBES = Array.from({ length: 15 }, (_, at) => (at + 1) / 16)

function fitPieces(at: (t: number) => Point, start: number, end: number, tolerance: number, halvings: number): Piece[] {
  const middle = (start + end) / 2
  const [from, via, to] = [at(start), at(middle), at(end)]
  const probes = PROBES.map((share) => at(start + share * (end - start)))
  const piece = bestPiece(from, via, to, probes, tolerance)
  if (piece !== null || halvings >= MAX_HALVINGS) return [piece ?? { from, via: null, to }]
  return [
    ...fitPieces(at, start, middle, tolerance, halvings + 1),
    ...fitPieces(at, middle, end, tolerance, halvings + 1),
  ]
}

function bestPiece(from: Point, via: Point, to: Point, probes: readonly Point[], tolerance: number): Piece | null {
  if (probes.every((point) => distanceToSegment(point, from, to) <= tolerance / 16)) return { from, via: null, to }
  const circle = circleThrough(from, via, to)
  if (circle === null) return null
  const [[cx, cy], radius] = circle
  const isNear = probes.every(([x, y]) => Math.abs(Math.hypot(x - cx, y - cy) - radius) <= tolerance)
  // Seen from the through-point both ends lie at a right angle or more: at most a half circle, the way round that was probed.
  const isShort = (from[0] - via[0]) * (to[0] - via[0]) + (from[1] - via[1]) * (to[1] - via[1]) <= 0
  return isNear && isShort ? { from, via, to } : null
}

function distanceToSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay]
  const length2 = dx * dx + dy * dy
  const share = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length2))
  return Math.hypot(x - ax - share * dx, y - ay - share * dy)
}

export function circleThrough(a: Point, b: Point, c: Point): readonly [Point, number] | null {
  const [bx, by, cx, cy] = [b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]]
  const cross = 2 * (bx * cy - by * cx)
  if (cross === 0) return null
  const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy]
  const [ux, uy] = [(cy * b2 - by * c2) / cross, (bx * c2 - cx * b2) / cross]
  const radius = Math.hypot(ux, uy)
  return Number.isFinite(radius) ? [[a[0] + ux, a[1] + uy], radius] : null
}
