import 'server-only'
import type { ExactCurve, ExactSolid, ExactSurface, Vector } from '@/lib/engine/folding'
import { type StepFile, stepList, stepReal, stepText } from './part-21'

/** A closed body as `manifold_solid_brep` (ISO 10303-42), with its name. */
export function addSolid(file: StepFile, { vertices, edges, faces }: ExactSolid, name: string): string {
  const corners = vertices.map((at) => file.add(`VERTEX_POINT('',${addPoint(file, at)})`))
  const curves = edges.map(({ from, to, curve }) => {
    const [start, end] = [vertices[from] ?? ORIGIN, vertices[to] ?? ORIGIN]
    return file.add(`EDGE_CURVE('',${corners[from]},${corners[to]},${addCurve(file, curve, start, end)},.T.)`)
  })
  const shell = faces.map(({ surface, isOutward, loops }) => {
    const bounds = loops.map((loop, at) => {
      const uses = loop.map(({ edge, isForward }) =>
        file.add(`ORIENTED_EDGE('',*,*,${curves[edge]},${flag(isForward)})`),
      )
      const ring = file.add(`EDGE_LOOP('',${stepList(uses)})`)
      return file.add(`${at === 0 ? 'FACE_OUTER_BOUND' : 'FACE_BOUND'}('',${ring},.T.)`)
    })
    return file.add(`ADVANCED_FACE('',${stepList(bounds)},${addSurface(file, surface)},${flag(isOutward)})`)
  })
  return file.add(`MANIFOLD_SOLID_BREP(${stepText(name)},${file.add(`CLOSED_SHELL('',${stepList(shell)})`)})`)
}

const ORIGIN: Vector = [0, 0, 0]
const flag = (is: boolean) => (is ? '.T.' : '.F.')
const addPoint = (file: StepFile, at: Vector) => file.once(`CARTESIAN_POINT('',${stepList(at.map(stepReal))})`)
const addDirection = (file: StepFile, along: Vector) => file.once(`DIRECTION('',${stepList(along.map(stepReal))})`)

/** A place with z along an axis; x is any direction square to it, the same each time. */
export function addPlace(file: StepFile, origin: Vector, axis: Vector): string {
  const [x, y, z] = axis
  const square: Vector = Math.abs(x) < Math.abs(z) || Math.abs(y) < Math.abs(z) ? [z, 0, -x] : [-y, x, 0]
  const long = Math.hypot(...square)
  const across: Vector = long === 0 ? [1, 0, 0] : [square[0] / long, square[1] / long, square[2] / long]
  const directions = `${addDirection(file, axis)},${addDirection(file, across)}`
  return file.once(`AXIS2_PLACEMENT_3D('',${addPoint(file, origin)},${directions})`)
}

function addCurve(file: StepFile, curve: ExactCurve, from: Vector, to: Vector): string {
  switch (curve.kind) {
    case 'line': {
      const along: Vector = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
      const long = Math.hypot(...along)
      const direction = addDirection(file, [along[0] / long, along[1] / long, along[2] / long])
      return file.add(`LINE('',${addPoint(file, from)},${file.add(`VECTOR('',${direction},1.)`)})`)
    }
    case 'circle':
      return file.add(`CIRCLE('',${addPlace(file, curve.centre, curve.axis)},${stepReal(curve.radiusMm)})`)
    case 'spline': {
      const poles = stepList(curve.poles.map((pole) => addPoint(file, pole)))
      return file.add(
        `B_SPLINE_CURVE_WITH_KNOTS('',3,${poles},.UNSPECIFIED.,.F.,.F.,${knotsOf(curve.poles.length)},.UNSPECIFIED.)`,
      )
    }
  }
}

function addSurface(file: StepFile, surface: ExactSurface): string {
  switch (surface.kind) {
    case 'plane':
      return file.add(`PLANE('',${addPlace(file, surface.origin, surface.normal)})`)
    case 'cylinder': {
      const { origin, axis, radiusMm } = surface
      return file.add(`CYLINDRICAL_SURFACE('',${addPlace(file, origin, axis)},${stepReal(radiusMm)})`)
    }
    case 'ruled': {
      const rows = surface.low.map((pole, at) =>
        stepList([addPoint(file, pole), addPoint(file, surface.high[at] ?? pole)]),
      )
      const [counts, knots] = splitKnots(surface.low.length)
      return file.add(
        `B_SPLINE_SURFACE_WITH_KNOTS('',3,1,${stepList(rows)},.UNSPECIFIED.,.F.,.F.,.F.,${counts},(2,2),${knots},(0.,1.),.UNSPECIFIED.)`,
      )
    }
  }
}

const knotsOf = (poles: number): string => splitKnots(poles).join(',')

/** Two poles to each piece: inner knots are double, which leaves no corner. */
function splitKnots(poles: number): readonly [counts: string, knots: string] {
  const pieces = (poles - 2) / 2
  const all = Array.from({ length: pieces + 1 }, (_, at) => at)
  return [
    stepList(all.map((at) => (at === 0 || at === pieces ? '4' : '2'))),
    stepList(all.map((at) => stepReal(at / pieces))),
  ]
}
