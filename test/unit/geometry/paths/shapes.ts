import type { Loop, Motion, PointNm } from '@/lib/geometry'

const MM = 1_000_000
const mm = (x: number, y: number): PointNm => [Math.round(x * MM) + 0, Math.round(y * MM) + 0]

/** Corners without arcs. */
export const polygon = (...corners: readonly (readonly [number, number])[]): Loop =>
  corners.map(([x, y]) => ({ at: mm(x, y), via: null }))

/** Straight sides of a length, joined by half circles of a radius. */
export const stadium = (length: number, radius: number): Loop => [
  { at: mm(0, -radius), via: null },
  { at: mm(length, -radius), via: mm(length + radius, 0) },
  { at: mm(length, radius), via: null },
  { at: mm(0, radius), via: mm(-radius, 0) },
]

/** An L of two 20 mm arms, 8 mm wide, its inside corner rounded. */
export const roundedL = (radius: number): Loop => {
  const centre = 8 + radius
  const offset = centre - radius * Math.SQRT1_2
  return [
    { at: mm(0, 0), via: null },
    { at: mm(20, 0), via: null },
    { at: mm(20, 8), via: null },
    { at: mm(centre, 8), via: mm(offset, offset) },
    { at: mm(8, centre), via: null },
    { at: mm(8, 20), via: null },
    { at: mm(0, 20), via: null },
  ]
}

export const disc = (radius: number, x = 0, y = 0): Loop => [
  { at: mm(x - radius, y), via: mm(x, y - radius) },
  { at: mm(x + radius, y), via: mm(x, y + radius) },
]

/** Quarter turns and their mirror images, each with a shift: exact motions. */
export const EXACT_MOTIONS: readonly Motion[] = [
  [1, 0, 0, 1],
  [0, 1, -1, 0],
  [-1, 0, 0, -1],
  [0, -1, 1, 0],
  [-1, 0, 0, 1],
  [1, 0, 0, -1],
  [0, 1, 1, 0],
  [0, -1, -1, 0],
].map(([a = 0, b = 0, c = 0, d = 0]) => ({ xTo: [a, b], yTo: [c, d], move: [1_234_567, -7_654_321] }))

/** The same loop from another node, and the other way round. */
export const from = (loop: Loop, start: number): Loop => [...loop.slice(start), ...loop.slice(0, start)]

export const backwards = (loop: Loop): Loop =>
  loop.map((_, at) => {
    const node = loop[loop.length - 1 - at]
    const before = loop[(2 * loop.length - 2 - at) % loop.length]
    if (node === undefined || before === undefined) throw new Error('no node')
    return { at: node.at, via: before.via }
  })

export const carry = ({ xTo, yTo, move }: Motion, [x, y]: PointNm): PointNm => [
  x * xTo[0] + y * yTo[0] + move[0] + 0,
  x * xTo[1] + y * yTo[1] + move[1] + 0,
]
