import { toSegment } from '../copper/edges'
import { contains } from '../copper/islands'
import { areaNm2, type FlatPath } from '../shape/path'
import type { Rings } from './ground'

export const isInside = (rings: Rings, x: number, y: number): boolean =>
  rings.reduce((inside, ring) => (contains(ring, x, y) ? !inside : inside), false)

/** What the first ring holds without the others. */
export const areaOfRings = ([outer = [], ...holes]: Rings): number =>
  Math.abs(areaNm2(outer)) - holes.reduce((sum, hole) => sum + Math.abs(areaNm2(hole)), 0)

/** Outer border against the clock, holes with it: what lies between adds up by winding. */
export function windRings([outer, ...holes]: Rings): FlatPath[] {
  const turn = (ring: FlatPath, isHole: boolean): FlatPath => {
    if (areaNm2(ring) > 0 !== isHole) return ring
    const turned: FlatPath = []
    for (let at = ring.length - 2; at >= 0; at -= 2) turned.push(ring[at] ?? 0, ring[at + 1] ?? 0)
    return turned
  }
  return outer === undefined ? [] : [turn(outer, false), ...holes.map((hole) => turn(hole, true))]
}

export function boxOf(rings: Rings): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const ring of rings) {
    for (let at = 0; at + 1 < ring.length; at += 2) {
      box[0] = Math.min(box[0], ring[at] ?? 0)
      box[1] = Math.min(box[1], ring[at + 1] ?? 0)
      box[2] = Math.max(box[2], ring[at] ?? 0)
      box[3] = Math.max(box[3], ring[at + 1] ?? 0)
    }
  }
  return box
}

/** Every edge of the rings, the closing ones too. */
export function forEdges(rings: Rings, take: (ax: number, ay: number, bx: number, by: number) => void): void {
  for (const ring of rings) {
    let ax = ring[ring.length - 2] ?? 0
    let ay = ring[ring.length - 1] ?? 0
    for (let at = 0; at + 1 < ring.length; at += 2) {
      const bx = ring[at] ?? 0
      const by = ring[at + 1] ?? 0
      take(ax, ay, bx, by)
      ax = bx
      ay = by
    }
  }
}

/** From a place to the nearest border; infinite where there is none. */
export function distanceToRings(rings: Rings, x: number, y: number): number {
  let least = Infinity
  forEdges(rings, (ax, ay, bx, by) => {
    const [dx, dy] = toSegment(x, y, ax, ay, bx, by)
    const square = dx * dx + dy * dy
    if (square < least) least = square
  })
  return Math.sqrt(least)
}

/** Corners, and places between them so that none of a border lies far from one. */
export function sampleRings(rings: Rings, stepNm: number, most: number): number[] {
  let length = 0
  forEdges(rings, (ax, ay, bx, by) => {
    length += Math.hypot(bx - ax, by - ay)
  })
  const step = Math.max(stepNm, length / most)
  const places: number[] = []
  forEdges(rings, (ax, ay, bx, by) => {
    const count = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / step))
    for (let at = 0; at < count; at += 1) places.push(ax + ((bx - ax) * at) / count, ay + ((by - ay) * at) / count)
  })
  return places
}
