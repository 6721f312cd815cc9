import type { StackedCopper } from '../copper/copper-stack'
import { sweepOf } from '../gerber/arcs'
import { ARC_CLOCKWISE, FLASH, LINE, NUMBERS_PER_OBJECT, REGION } from '../objects/objects'
import { extentOf } from '../shape/extents'
import type { Rings } from './ground'
import { boxOf, forEdges, isInside } from './rings'

/** A straight piece of a conductor's middle within a bend. */
export interface Piece {
  readonly object: number
  readonly widthNm: number
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  /** Is each end one of the drawn stroke, or where the bend cuts it? */
  readonly endsAtA: boolean
  readonly endsAtB: boolean
  /** Chords of an arc turn by its curve. */
  readonly isArc: boolean
}

/** Shorter pieces say nothing of a direction. */
const LEAST_PIECE_NM = 20_000
/** Looked at this far beside a stroke: is there an edge, or is it hidden in a plane? */
const BESIDE_NM = 5000
const LARGEST_CHORD_RAD = Math.PI / 36

/** Strokes of round apertures that are conductors within a place: of those that only fill a plane both sides are copper. */
export function piecesIn(layer: StackedCopper, rings: Rings, candidates: Iterable<number>): Piece[] {
  const { objects } = layer
  const pieces: Piece[] = []
  for (const object of candidates) {
    const kind = objects.kinds[object] ?? 0
    if (kind === FLASH || kind === REGION || objects.isClear[object] === 1) continue
    const widthNm = objects.apertures[objects.apertureAt[object] ?? -1]?.diameterNm ?? 0
    if (widthNm <= 0) continue
    const chords = chordsOf(layer, object)
    for (let at = 0; at + 3 < chords.length; at += 2) {
      const [ax = 0, ay = 0, bx = 0, by = 0] = chords.slice(at, at + 4)
      for (const [from, to] of insideOf(rings, ax, ay, bx, by)) {
        const piece: Piece = {
          object,
          widthNm,
          ax: ax + (bx - ax) * from,
          ay: ay + (by - ay) * from,
          bx: ax + (bx - ax) * to,
          by: ay + (by - ay) * to,
          endsAtA: from === 0 && at === 0,
          endsAtB: to === 1 && at + 5 >= chords.length,
          isArc: kind !== LINE,
        }
        if (lengthOf(piece) >= LEAST_PIECE_NM && isVisible(layer, piece)) pieces.push(piece)
      }
    }
  }
  return pieces
}

/** Objects whose extents touch a place's box. */
export function objectsNear(layer: StackedCopper, rings: Rings): number[] {
  const [minX, minY, maxX, maxY] = boxOf(rings)
  const found: number[] = []
  for (let object = 0; object < layer.objects.count; object += 1) {
    const extent = extentOf(layer.objects, object)
    if (extent === null) continue
    if (extent[0] <= maxX && extent[2] >= minX && extent[1] <= maxY && extent[3] >= minY) found.push(object)
  }
  return found
}

export const lengthOf = ({ ax, ay, bx, by }: Piece): number => Math.hypot(bx - ax, by - ay)

/** A conductor has an edge on one side at least, along its middle. */
function isVisible({ islands }: StackedCopper, piece: Piece): boolean {
  const { ax, ay, bx, by, widthNm } = piece
  const length = lengthOf(piece)
  const [ux, uy] = [-(by - ay) / length, (bx - ax) / length]
  const reach = widthNm / 2 + BESIDE_NM
  return [0.25, 0.5, 0.75].some((share) => {
    const [x, y] = [ax + (bx - ax) * share, ay + (by - ay) * share]
    const side = (sign: number) =>
      islands.at(Math.round(x + sign * ux * reach), Math.round(y + sign * uy * reach)) === null
    return islands.at(Math.round(x), Math.round(y)) !== null && side(1) && side(-1)
  })
}

function chordsOf({ objects }: StackedCopper, object: number): number[] {
  const from = object * NUMBERS_PER_OBJECT
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, cx = 0, cy = 0] = objects.numbers.subarray(from, from + NUMBERS_PER_OBJECT)
  if (objects.kinds[object] === LINE) return [x0, y0, x1, y1]
  const isClockwise = objects.kinds[object] === ARC_CLOCKWISE
  const sweep = x0 === x1 && y0 === y1 ? 2 * Math.PI : sweepOf(x0 - cx, y0 - cy, x1 - cx, y1 - cy, isClockwise)
  const count = Math.max(1, Math.ceil(sweep / LARGEST_CHORD_RAD))
  const [radius, start] = [Math.hypot(x0 - cx, y0 - cy), Math.atan2(y0 - cy, x0 - cx)]
  const places = [x0, y0]
  for (let at = 1; at < count; at += 1) {
    const angle = start + ((isClockwise ? -1 : 1) * sweep * at) / count
    places.push(cx + radius * Math.cos(angle), cy + radius * Math.sin(angle))
  }
  return [...places, x1, y1]
}

/** Stretches of a segment that lie inside, as shares of it. */
export function insideOf(rings: Rings, ax: number, ay: number, bx: number, by: number): [number, number][] {
  const shares = [0, 1]
  forEdges(rings, (cx, cy, dx, dy) => {
    const cross = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if (cross === 0) return
    const onFirst = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / cross
    const onSecond = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / cross
    if (onFirst > 0 && onFirst < 1 && onSecond >= 0 && onSecond <= 1) shares.push(onFirst)
  })
  shares.sort((one, other) => one - other)
  const inside: [number, number][] = []
  for (let at = 0; at + 1 < shares.length; at += 1) {
    const [from = 0, to = 0] = [shares[at], shares[at + 1]]
    if (to - from < 1e-9) continue
    const middle = (from + to) / 2
    if (!isInside(rings, ax + (bx - ax) * middle, ay + (by - ay) * middle)) continue
    const last = inside.at(-1)
    if (last !== undefined && last[1] === from) last[1] = to
    else inside.push([from, to])
  }
  return inside
}
