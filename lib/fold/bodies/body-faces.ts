import { cross, dot, lengthOf, minus, type Vector } from '../kinematics/vector'
import { areaOf } from './cut-flat'
import type { PlacedBody, PlacedPrism } from './place-bodies'

/** A face of a folded body. Those of a band are plane to within the sag of its strips. */
export interface BodyFace {
  /** Counter-clockwise, seen from outside. */
  readonly corners: readonly Vector[]
  readonly side: 'top' | 'bottom' | 'edge'
  /** Whether the side from each corner to the next is an edge of the body, rather than a cut between two of its pieces. */
  readonly isEdge: readonly boolean[]
}

/** Flat corners are the same to within this: cuts of neighbouring pieces are computed from either side. */
const SAME_MM = 1e-6
/** An upright edge is drawn where the outline turns by more: chords of one arc turn by less. */
const CORNER_DEG = 25

/** What closes a body: faces over and under each piece, and walls where no other piece goes on. */
export function listFacesOf({ prisms }: PlacedBody): readonly BodyFace[] {
  const pieces = prisms.map(turnLeft)
  const sides = new Map<string, number>()
  for (const { flat } of pieces) {
    flat.forEach((from, at) => {
      const key = keyOfSide(from, flat[(at + 1) % flat.length] ?? from)
      sides.set(key, (sides.get(key) ?? 0) + 1)
    })
  }
  const isOuter = (from: Vector, to: Vector) => sides.get(keyOfSide(from, to)) === 1
  const isCorner = cornersOf(pieces, isOuter)
  return pieces.flatMap(({ flat, low, high }): BodyFace[] => {
    const next = (at: number) => (at + 1) % flat.length
    const outer = flat.map((from, at) => isOuter(from, flat[next(at)] ?? from))
    const walls = flat.flatMap((from, at): BodyFace[] => {
      const to = flat[next(at)] ?? from
      const corners = [low[at], low[next(at)], high[next(at)], high[at]].filter((corner) => corner !== undefined)
      return outer[at] === true ? [{ corners, side: 'edge', isEdge: [true, isCorner(to), true, isCorner(from)] }] : []
    })
    const below = outer.map((_, at) => outer[(2 * flat.length - 2 - at) % flat.length] === true)
    return [
      { corners: high, side: 'top', isEdge: outer },
      { corners: low.toReversed(), side: 'bottom', isEdge: below },
      ...walls,
    ]
  })
}

interface Piece {
  readonly flat: readonly Vector[]
  readonly low: readonly Vector[]
  readonly high: readonly Vector[]
}

/** Corners of a prism come in pairs, lower and upper. */
function turnLeft({ corners, flat }: PlacedPrism): Piece {
  const evens = flat.flatMap((_, index) => (index % 2 === 0 ? [index] : []))
  const ring =
    areaOf(evens.map((index) => [flat[index]?.[0] ?? 0, flat[index]?.[1] ?? 0])) < 0 ? evens.reverse() : evens
  const cornerAt = (list: readonly Vector[], index: number): Vector => list[index] ?? [0, 0, 0]
  return {
    flat: ring.map((index) => cornerAt(flat, index)),
    low: ring.map((index) => cornerAt(corners, index)),
    high: ring.map((index) => cornerAt(corners, index + 1)),
  }
}

const keyOfPoint = ([x, y]: Vector) => `${Math.round(x / SAME_MM)},${Math.round(y / SAME_MM)}`

function keyOfSide(from: Vector, to: Vector): string {
  const [a, b] = [keyOfPoint(from), keyOfPoint(to)]
  return a < b ? `${a} ${b}` : `${b} ${a}`
}

function cornersOf(
  pieces: readonly Piece[],
  isOuter: (from: Vector, to: Vector) => boolean,
): (point: Vector) => boolean {
  const ways = new Map<string, Vector[]>()
  for (const { flat } of pieces) {
    flat.forEach((from, at) => {
      const to = flat[(at + 1) % flat.length] ?? from
      if (!isOuter(from, to)) return
      const way = minus(to, from)
      for (const end of [from, to]) ways.set(keyOfPoint(end), [...(ways.get(keyOfPoint(end)) ?? []), way])
    })
  }
  return (point) => {
    const [one, other, ...more] = ways.get(keyOfPoint(point)) ?? []
    if (one === undefined || other === undefined || more.length > 0) return true
    return (Math.abs(Math.atan2(cross(one, other)[2], dot(one, other))) * 180) / Math.PI > CORNER_DEG
  }
}

/** Unit normal of a face, outwards (Newell 1972: right for faces that are not quite plane). */
export function normalOf(corners: readonly Vector[]): Vector {
  let normal: Vector = [0, 0, 0]
  corners.forEach(([x, y, z], at) => {
    const [u, v, w] = corners[(at + 1) % corners.length] ?? [x, y, z]
    normal = [normal[0] + (y - v) * (z + w), normal[1] + (z - w) * (x + u), normal[2] + (x - u) * (y + v)]
  })
  const long = lengthOf(normal)
  return long === 0 ? [0, 0, 1] : [normal[0] / long, normal[1] / long, normal[2] / long]
}
