import {
  type Affine,
  type Curve,
  FULL_TURN_RAD,
  IDENTITY,
  makeBulge,
  makeCircularArc,
  makeLine,
  type Point,
  scaleBy,
} from '../curves'
import type { Group } from './groups'
import { shorten } from './groups'
import type { Entity } from './structure'

/** What an entity draws, in its own coordinates, and how these lie in those of the drawing. A reason where it cannot be drawn. */
export type EntityCurves =
  | { readonly ok: true; readonly curves: readonly Curve[]; readonly by: Affine; readonly remark: string | null }
  | { readonly ok: false; readonly reason: string }

const refuse = (reason: string): EntityCurves => ({ ok: false, reason })

/** Group codes after the DXF reference: LINE, ARC, CIRCLE, LWPOLYLINE, POLYLINE and VERTEX read, ELLIPSE and SPLINE from memory. */
export function curvesOf(entity: Entity, vertices: readonly Entity[]): EntityCurves | null {
  const numbers = new Numbers(entity)
  const result = drawEntity(entity, numbers, vertices)
  if (result === null || numbers.fault === null) return result
  return refuse(numbers.fault)
}

function drawEntity(entity: Entity, numbers: Numbers, vertices: readonly Entity[]): EntityCurves | null {
  switch (entity.type) {
    case 'LINE':
      return done([makeLine([numbers.get(10), numbers.get(20)], [numbers.get(11), numbers.get(21)])], IDENTITY, null)
    case 'CIRCLE':
    case 'ARC':
      return drawArc(entity, numbers)
    case 'LWPOLYLINE':
      return drawLightPolyline(entity, numbers)
    case 'POLYLINE':
      return drawPolyline(numbers, vertices)
    case 'ELLIPSE':
      return drawEllipse(numbers)
    case 'SPLINE':
      return drawSpline(numbers)
    default:
      return null
  }
}

function done(curves: readonly Curve[], by: Affine | null, remark: string | null): EntityCurves {
  return by === null ? refuse(TILTED) : { ok: true, curves, by, remark }
}

const TILTED = 'lies in a plane that is tilted against the drawing: left out'

/**
 * Coordinates of an object to those of the drawing. The algorithm of the reference gives, for a normal that points down, the x axis turned
 * round: such objects are mirrored. Null for any other normal than up and down.
 */
export function planeOf(numbers: Numbers): Affine | null {
  const [x, y, z] = [numbers.get(210, 0), numbers.get(220, 0), numbers.get(230, 1)]
  const length = Math.hypot(x, y, z)
  if (length === 0 || Math.hypot(x, y) > 1e-9 * length) return null
  return z > 0 ? IDENTITY : scaleBy(-1, 1)
}

/** Numbers of an entity by group code; the first fault is kept, since one wrong number makes the whole entity wrong. */
export class Numbers {
  fault: string | null = null

  constructor(private readonly entity: Entity) {}

  get(code: number, otherwise?: number): number {
    const group = this.entity.groups.find((candidate) => candidate.code === code)
    if (group === undefined) {
      if (otherwise === undefined) this.blame(`has no group ${code}: left out`)
      return otherwise ?? 0
    }
    return this.read(group)
  }

  all(code: number): number[] {
    return this.entity.groups.filter((group) => group.code === code).map((group) => this.read(group))
  }

  read({ code, value, line }: Group): number {
    const text = value.trim()
    const number = text === '' ? Number.NaN : Number(text)
    if (!Number.isFinite(number))
      this.blame(`group ${code} in line ${line + 1}, "${shorten(value)}", is not a number: left out`)
    return Number.isFinite(number) ? number : 0
  }

  private blame(fault: string): void {
    this.fault ??= fault
  }
}

const toRad = (deg: number) => (deg * Math.PI) / 180

/** Always counter-clockwise in its own plane, from its start to its end angle. */
function drawArc({ type }: Entity, numbers: Numbers): EntityCurves {
  const radius = numbers.get(40)
  if (!(radius > 0) && numbers.fault === null) return refuse(`has a radius of ${radius}: left out`)
  const middle: Point = [numbers.get(10), numbers.get(20)]
  if (type === 'CIRCLE') return done([makeCircularArc(middle, radius, 0, FULL_TURN_RAD)], planeOf(numbers), null)
  const start = numbers.get(50)
  const sweep = (((numbers.get(51) - start) % 360) + 360) % 360
  return done([makeCircularArc(middle, radius, toRad(start), toRad(sweep === 0 ? 360 : sweep))], planeOf(numbers), null)
}

function drawLightPolyline(entity: Entity, numbers: Numbers): EntityCurves {
  const vertices: Vertex[] = []
  for (const group of entity.groups) {
    const last = vertices.at(-1)
    if (group.code === 10) vertices.push({ at: [numbers.read(group), 0], bulge: 0 })
    else if (last !== undefined && group.code === 20) last.at = [last.at[0], numbers.read(group)]
    else if (last !== undefined && group.code === 42) last.bulge = numbers.read(group)
  }
  const isWide = [40, 41, 43].some((code) => numbers.all(code).some((width) => width > 0))
  return joinVertices(vertices, (numbers.get(70, 0) & 1) === 1, planeOf(numbers), isWide)
}

interface Vertex {
  at: Point
  bulge: number
}

const WIDE = 'has a width: its middle line is taken'

function joinVertices(
  vertices: readonly Vertex[],
  isClosed: boolean,
  by: Affine | null,
  isWide: boolean,
): EntityCurves {
  if (vertices.length < 2) return refuse(`has ${vertices.length} of the 2 vertices that it needs: left out`)
  const curves = vertices.flatMap(({ at, bulge }, index) => {
    const next = vertices[index + 1] ?? (isClosed ? vertices[0] : undefined)
    if (next === undefined || (at[0] === next.at[0] && at[1] === next.at[1])) return []
    return [makeBulge(at, next.at, bulge)]
  })
  return done(curves, by, isWide ? WIDE : null)
}

/** The older polyline: flags 1 closed, 8 in space, 16 and 64 meshes; a vertex with flag 16 belongs to the frame of a curve, not to it. */
function drawPolyline(numbers: Numbers, list: readonly Entity[]): EntityCurves {
  const flags = numbers.get(70, 0)
  if ((flags & (16 | 64)) !== 0) return refuse('is a mesh: left out')
  const vertices: Vertex[] = []
  for (const entity of list) {
    const own = new Numbers(entity)
    if ((own.get(70, 0) & 16) !== 0) continue
    vertices.push({ at: [own.get(10), own.get(20)], bulge: (flags & 8) !== 0 ? 0 : own.get(42, 0) })
    if (own.fault !== null) return refuse(`its vertex in line ${entity.line}: ${own.fault}`)
  }
  const isWide = [40, 41].some((code) => numbers.get(code, 0) > 0)
  return joinVertices(vertices, (flags & 1) === 1, (flags & 8) !== 0 ? IDENTITY : planeOf(numbers), isWide)
}

/** Middle and major half axis in the drawing's coordinates; the minor one is square to it as seen along the normal. Parameters are no angles. */
function drawEllipse(numbers: Numbers): EntityCurves {
  const by = planeOf(numbers)
  if (by === null) return refuse(TILTED)
  const u: Point = [numbers.get(11), numbers.get(21)]
  const ratio = numbers.get(40)
  if ((!(ratio > 0) || Math.hypot(...u) === 0) && numbers.fault === null)
    return refuse('has an axis of no length: left out')
  const start = numbers.get(41, 0)
  const swept = numbers.get(42, FULL_TURN_RAD) - start
  const sweepRad =
    swept > 0 && swept <= FULL_TURN_RAD ? swept : ((swept % FULL_TURN_RAD) + FULL_TURN_RAD) % FULL_TURN_RAD
  const side = by.a * ratio
  return done(
    [
      {
        kind: 'ellipse',
        middle: [numbers.get(10), numbers.get(20)],
        u,
        v: [-u[1] * side, u[0] * side],
        startRad: start,
        sweepRad: sweepRad === 0 ? FULL_TURN_RAD : sweepRad,
        ends: null,
      },
    ],
    IDENTITY,
    null,
  )
}

const MAX_DEGREE = 15
const MAX_CONTROL_POINTS = 20_000

function drawSpline(numbers: Numbers): EntityCurves {
  const degree = numbers.get(71, 3)
  const knots = numbers.all(40)
  const [xs, ys] = [numbers.all(10), numbers.all(20)]
  const weights = numbers.all(41)
  if (xs.length === 0) {
    return refuse(
      numbers.all(11).length > 0
        ? 'is a spline by fit points alone: what runs between them is not in the file; left out'
        : 'is a spline without control points: left out',
    )
  }
  if (!Number.isInteger(degree) || degree < 1 || degree > MAX_DEGREE)
    return refuse(`is a spline of degree ${degree}: left out`)
  if (xs.length > MAX_CONTROL_POINTS)
    return refuse(`is a spline of ${xs.length} points; at most ${MAX_CONTROL_POINTS} are read`)
  if (xs.length !== ys.length || xs.length <= degree || knots.length !== xs.length + degree + 1) {
    return refuse(
      `is a spline of ${xs.length} points and ${knots.length} knots, which degree ${degree} does not go with: left out`,
    )
  }
  if (knots.some((knot, at) => knot < (knots[at - 1] ?? knot)))
    return refuse('is a spline whose knots go back: left out')
  if (!((knots[degree] ?? 0) < (knots[xs.length] ?? 0))) return refuse('is a spline of no length: left out')
  if (weights.length !== 0 && (weights.length !== xs.length || weights.some((weight) => !(weight > 0)))) {
    return refuse('is a spline with weights that are missing or not above 0: left out')
  }
  const points = xs.map((x, at): Point => [x, ys[at] ?? 0])
  return done(
    [{ kind: 'spline', degree, knots, points, weights: weights.length === 0 ? null : weights }],
    IDENTITY,
    null,
  )
}
