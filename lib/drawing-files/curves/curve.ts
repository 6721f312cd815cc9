import { type Affine, carry, carryVector, type Point } from './affine'

/**
 * Every curve that a file can hold, in a form that stays itself under any placing: a line by its ends, a piece of an ellipse by middle
 * and two half axes (a circle's are alike and square), a rational B-spline by its control points.
 */
export type Curve =
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point }
  | {
      readonly kind: 'ellipse'
      readonly middle: Point
      /** The point at parameter t is middle + u cos t + v sin t. */
      readonly u: Point
      readonly v: Point
      readonly startRad: number
      readonly sweepRad: number
      /** The ends as the file says them, where it does: pieces that meet there share them. */
      readonly ends: readonly [Point, Point] | null
    }
  | {
      readonly kind: 'spline'
      readonly degree: number
      readonly knots: readonly number[]
      readonly points: readonly Point[]
      /** One to a point; null where all are 1. */
      readonly weights: readonly number[] | null
    }

export type EllipseCurve = Extract<Curve, { kind: 'ellipse' }>
export type SplineCurve = Extract<Curve, { kind: 'spline' }>

export const FULL_TURN_RAD = 2 * Math.PI

export function makeLine(from: Point, to: Point): Curve {
  return { kind: 'line', from, to }
}

export function makeCircularArc(middle: Point, radius: number, startRad: number, sweepRad: number): EllipseCurve {
  return { kind: 'ellipse', middle, u: [radius, 0], v: [0, radius], startRad, sweepRad, ends: null }
}

/** Below this a bulge is a straight way: its sagitta is that share of half the chord. */
const STRAIGHT_BULGE = 1e-9

/** The way from one vertex to the next by its bulge, the tangent of a quarter of the angle; positive turns left (DXF reference, LWPOLYLINE, group 42). */
export function makeBulge(from: Point, to: Point, bulge: number): Curve {
  if (Math.abs(bulge) < STRAIGHT_BULGE) return makeLine(from, to)
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const off = (1 - bulge * bulge) / (4 * bulge)
  const middle: Point = [(from[0] + to[0]) / 2 - off * dy, (from[1] + to[1]) / 2 + off * dx]
  const u: Point = [from[0] - middle[0], from[1] - middle[1]]
  return {
    kind: 'ellipse',
    middle,
    u,
    v: [-u[1], u[0]],
    startRad: 0,
    sweepRad: 4 * Math.atan(bulge),
    ends: [from, to],
  }
}

export function carryCurve(by: Affine, curve: Curve): Curve {
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', from: carry(by, curve.from), to: carry(by, curve.to) }
    case 'ellipse':
      return {
        ...curve,
        middle: carry(by, curve.middle),
        u: carryVector(by, curve.u),
        v: carryVector(by, curve.v),
        ends: curve.ends === null ? null : [carry(by, curve.ends[0]), carry(by, curve.ends[1])],
      }
    case 'spline':
      return { ...curve, points: curve.points.map((point) => carry(by, point)) }
  }
}

export function pointOfEllipse({ middle, u, v }: EllipseCurve, rad: number): Point {
  const [cos, sin] = [Math.cos(rad), Math.sin(rad)]
  return [middle[0] + u[0] * cos + v[0] * sin, middle[1] + u[1] * cos + v[1] * sin]
}

/** By de Boor's scheme on weighted points (Piegl and Tiller, The NURBS Book, chapter 4; from memory), in the span that begins at knot `span`. */
export function pointOfSpline({ degree, knots, points, weights }: SplineCurve, span: number, at: number): Point {
  const local = Array.from({ length: degree + 1 }, (_, offset): [number, number, number] => {
    const index = span - degree + offset
    const [x, y] = points[index] ?? [0, 0]
    const weight = weights?.[index] ?? 1
    return [x * weight, y * weight, weight]
  })
  for (let level = 1; level <= degree; level += 1) {
    for (let offset = degree; offset >= level; offset -= 1) {
      const left = knots[span - degree + offset] ?? 0
      const right = knots[span + 1 + offset - level] ?? 0
      const share = right > left ? (at - left) / (right - left) : 0
      const [a, b] = [local[offset - 1], local[offset]]
      if (a === undefined || b === undefined) continue
      for (const axis of [0, 1, 2] as const) b[axis] = (1 - share) * a[axis] + share * b[axis]
    }
  }
  const [x, y, weight] = local[degree] ?? [0, 0, 1]
  return [x / weight, y / weight]
}

/** Every place that holds the curve, to tell how far out it can reach. */
export function holdingPoints(curve: Curve): readonly Point[] {
  switch (curve.kind) {
    case 'line':
      return [curve.from, curve.to]
    case 'ellipse':
      return [curve.middle, curve.u, curve.v, ...(curve.ends ?? [])]
    case 'spline':
      return curve.points
  }
}
