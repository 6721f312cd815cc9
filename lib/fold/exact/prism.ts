import type { LineOrArc, Region } from '@/lib/geometry'
import { cross, lengthOf, minus, times, type Vector } from '../kinematics/vector'
import type { ExactCurve, ExactEdge, ExactFace, ExactSolid, ExactSurface } from './brep'

/** What stands over an area of the plane between two heights, once something has moved or bent it. */
export interface Raised {
  readonly id: string
  readonly region: Region
  readonly bottomMm: number
  readonly topMm: number
}

/** How a body of the flat part comes to lie: its points, and the curves and surfaces that its flat ones become. */
export interface Placing {
  readonly point: (flat: Vector) => Vector
  /** Of an edge of the plan at a height. */
  readonly curve: (edge: LineOrArc, heightMm: number) => ExactCurve
  /** Over an edge of the plan, its own normal to the right of it, away from the body; and whether it is. */
  readonly wall: (edge: LineOrArc, bottomMm: number, topMm: number) => Sided
  /** At a height, looking up where the flat one does. */
  readonly level: (heightMm: number) => Sided
  readonly volumeMm3: number
}

export interface Sided {
  readonly surface: ExactSurface
  readonly isOutward: boolean
}

export const NM_PER_MM = 1e6

export const inMm = ([x, y]: readonly [number, number], heightMm: number): Vector => [
  x / NM_PER_MM,
  y / NM_PER_MM,
  heightMm,
]

/** A body of two levels and a wall over each edge. Borders run with the area at their left, so walls look to the right. */
export function raise({ id, region, bottomMm, topMm }: Raised, placing: Placing): ExactSolid {
  const vertices: Vector[] = []
  const edges: ExactEdge[] = []
  const faces: ExactFace[] = []
  const bottoms: ExactFace['loops'][number][] = []
  const tops: ExactFace['loops'][number][] = []
  for (const loop of [region.outer, ...region.holes]) {
    const first = vertices.length
    for (const { from } of loop) vertices.push(placing.point(inMm(from, bottomMm)), placing.point(inMm(from, topMm)))
    const base = edges.length
    const count = loop.length
    loop.forEach((edge, at) => {
      const here = first + 2 * at
      const there = first + 2 * ((at + 1) % count)
      edges.push(
        { from: here, to: there, curve: placing.curve(edge, bottomMm) },
        { from: here + 1, to: there + 1, curve: placing.curve(edge, topMm) },
        { from: here, to: here + 1, curve: { kind: 'line' } },
      )
    })
    loop.forEach((edge, at) => {
      const own = base + 3 * at
      const next = base + 3 * ((at + 1) % count)
      const uses = [
        { edge: own, isForward: true },
        { edge: next + 2, isForward: true },
        { edge: own + 1, isForward: false },
        { edge: own + 2, isForward: false },
      ]
      faces.push({ ...placing.wall(edge, bottomMm, topMm), loops: [uses] })
    })
    tops.push(loop.map((_, at) => ({ edge: base + 3 * at + 1, isForward: true })))
    bottoms.push(loop.map((_, at) => ({ edge: base + 3 * at, isForward: false })).toReversed())
  }
  const [bottom, top] = [placing.level(bottomMm), placing.level(topMm)]
  faces.push({ ...bottom, isOutward: !bottom.isOutward, loops: bottoms }, { ...top, loops: tops })
  return { id, vertices, edges, faces, volumeMm3: placing.volumeMm3 }
}

/** Unit vector; that of no length stays what it is. */
export function unit(vector: Vector): Vector {
  const long = lengthOf(vector)
  return long === 0 ? vector : times(vector, 1 / long)
}

/** The plane over a straight wall: along it and upwards, looking to its right. */
export function wallPlane(from: Vector, to: Vector, above: Vector): Sided {
  return {
    surface: { kind: 'plane', origin: from, normal: unit(cross(minus(to, from), minus(above, from))) },
    isOutward: true,
  }
}
