import { normalOf } from '@/lib/engine/folding'

/** Millimetres as the eye sees them: x to the right, y down, z away from the eye. */
export type SeenPoint = readonly [x: number, y: number, z: number]

/** Points on both sides of a plane by less are on it: bodies that touch are not behind each other. */
const ON_PLANE_MM = 1e-4

interface Ranked {
  readonly corners: readonly SeenPoint[]
  readonly plane: readonly [a: number, b: number, c: number, d: number]
  readonly low: SeenPoint
  readonly high: SeenPoint
}

/**
 * Faces from back to front. One lies behind another where a plane through either of them parts them (Newell, Newell and Sancha 1972);
 * faces that do not overlap in the picture need no order. Where faces lie behind each other in a ring, the farthest goes first.
 *
 * @returns places in `faces`, the first to be painted first
 */
export function orderByDepth(faces: readonly (readonly SeenPoint[])[]): readonly number[] {
  const ranked = faces.map(rank)
  const inFront = ranked.map((): number[] => [])
  const waits = ranked.map(() => 0)
  ranked.forEach((one, first) => {
    for (let second = first + 1; second < ranked.length; second += 1) {
      const other = ranked[second]
      if (other === undefined || !overlap(one, other)) continue
      const answer = whichIsBehind(one, other)
      if (answer === 0) continue
      const [behind, before] = answer < 0 ? [first, second] : [second, first]
      inFront[behind]?.push(before)
      waits[before] = (waits[before] ?? 0) + 1
    }
  })
  const byDepth = ranked
    .map((_, at) => at)
    .sort((a, b) => (ranked[b]?.high[2] ?? 0) - (ranked[a]?.high[2] ?? 0) || a - b)
  const done = new Set<number>()
  const order: number[] = []
  while (order.length < ranked.length) {
    const next = byDepth.find((at) => !done.has(at) && waits[at] === 0) ?? byDepth.find((at) => !done.has(at))
    if (next === undefined) break
    done.add(next)
    order.push(next)
    for (const before of inFront[next] ?? []) waits[before] = (waits[before] ?? 0) - 1
  }
  return order
}

function rank(corners: readonly SeenPoint[]): Ranked {
  const normal = normalOf(corners)
  // Turned towards the eye, so that what has a positive distance is in front.
  const [a, b, c] = normal[2] > 0 ? ([-normal[0], -normal[1], -normal[2]] as const) : normal
  const mean = (axis: 0 | 1 | 2) => corners.reduce((sum, corner) => sum + corner[axis], 0) / corners.length
  const bound = (pick: (...values: number[]) => number): SeenPoint => [
    pick(...corners.map(([x]) => x)),
    pick(...corners.map(([, y]) => y)),
    pick(...corners.map(([, , z]) => z)),
  ]
  const plane = [a, b, c, -(a * mean(0) + b * mean(1) + c * mean(2))] as const
  return { corners, plane, low: bound(Math.min), high: bound(Math.max) }
}

const overlap = (one: Ranked, other: Ranked) =>
  ([0, 1] as const).every(
    (axis) => one.low[axis] < other.high[axis] - ON_PLANE_MM && other.low[axis] < one.high[axis] - ON_PLANE_MM,
  ) && !arePartedInPicture(one.corners, other.corners)

/** Whether a side of one of two convex outlines has the other wholly on its outer side. */
function arePartedInPicture(one: readonly SeenPoint[], other: readonly SeenPoint[]): boolean {
  return hasPartingSide(one, other) || hasPartingSide(other, one)
}

function hasPartingSide(ring: readonly SeenPoint[], other: readonly SeenPoint[]): boolean {
  return ring.some(([x, y], at) => {
    const [u, v] = ring[(at + 1) % ring.length] ?? [x, y]
    const long = Math.hypot(u - x, v - y)
    if (long < ON_PLANE_MM) return false
    const away = ([p, q]: SeenPoint) => ((u - x) * (q - y) - (v - y) * (p - x)) / long
    const own = ring.reduce((most, point) => (Math.abs(away(point)) > Math.abs(most) ? away(point) : most), 0)
    const outwards = own > 0 ? -1 : 1
    return other.every((point) => away(point) * outwards > -ON_PLANE_MM)
  })
}

/** Negative where the first is behind, positive where the second is, 0 where either order paints the same. */
function whichIsBehind(one: Ranked, other: Ranked): number {
  if (one.low[2] >= other.high[2]) return -1
  if (other.low[2] >= one.high[2]) return 1
  const otherOfOne = sidesOf(one, other)
  if (otherOfOne !== null && otherOfOne !== 0) return -otherOfOne
  const oneOfOther = sidesOf(other, one)
  return oneOfOther ?? 0
}

/** On which side of a face's plane another lies whole: 1 towards the eye, -1 away, 0 in it, null across it. */
function sidesOf({ plane: [a, b, c, d] }: Ranked, other: Ranked): number | null {
  let [front, back] = [false, false]
  for (const [x, y, z] of other.corners) {
    const distance = a * x + b * y + c * z + d
    if (distance > ON_PLANE_MM) front = true
    if (distance < -ON_PLANE_MM) back = true
  }
  if (front && back) return null
  return front ? 1 : back ? -1 : 0
}
