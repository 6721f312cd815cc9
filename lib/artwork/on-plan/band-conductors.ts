import type { StackedCopper } from '../copper/copper-stack'
import { FLASH, NUMBERS_PER_OBJECT } from '../objects/objects'
import { extentOf } from '../shape/extents'
import type { GroundBand } from './ground'
import { isInside } from './rings'
import type { Piece } from './strokes'

type Place = readonly [xNm: number, yNm: number]

/** What conductors do within a bend, each with the place where they do it, in the artwork's coordinates. */
export interface BandConductors {
  readonly pieceCount: number
  readonly narrowest: { readonly widthNm: number; readonly at: Place } | null
  /** To the axis of the bend, 0 along it to 90 square to it. */
  readonly leastAngle: { readonly deg: number; readonly at: Place } | null
  /** Of two strokes that meet, or of the chords of an arc. */
  readonly turns: readonly { readonly deg: number; readonly at: Place }[]
  readonly widthChanges: readonly { readonly fromNm: number; readonly toNm: number; readonly at: Place }[]
  readonly ends: readonly Place[]
  readonly junctions: readonly Place[]
  readonly pads: readonly Place[]
}

/** Ends this near to each other are one place: rounding. */
const JOINED_NM = 1000
/** Turns less than this are rounding of coordinates, or one chord of an arc to the next. */
const LEAST_TURN_DEG = 2
const SAME_WIDTH_NM = 1000
/** Looked at this far past an end: does copper go on? */
const PAST_END_NM = 5000

export function watchConductors(
  layer: StackedCopper,
  band: GroundBand,
  pieces: readonly Piece[],
  near: readonly number[],
): BandConductors {
  const axisDeg = (Math.atan2(band.toNm[1] - band.fromNm[1], band.toNm[0] - band.fromNm[0]) * 180) / Math.PI
  let narrowest: BandConductors['narrowest'] = null
  let leastAngle: BandConductors['leastAngle'] = null
  for (const piece of pieces) {
    const at: Place = [(piece.ax + piece.bx) / 2, (piece.ay + piece.by) / 2]
    if (narrowest === null || piece.widthNm < narrowest.widthNm) narrowest = { widthNm: piece.widthNm, at }
    const deg = acute(directionOf(piece) - axisDeg)
    if (leastAngle === null || deg < leastAngle.deg) leastAngle = { deg, at }
  }
  const pads = listPads(layer, band, near)
  return {
    pieceCount: pieces.length,
    narrowest,
    leastAngle,
    ...watchJoints(layer, band, pieces, pads),
    pads,
  }
}

interface Joint {
  readonly at: Place
  readonly pieces: { readonly piece: Piece /** Away from the joint. */; readonly deg: number }[]
}

function watchJoints(layer: StackedCopper, band: GroundBand, pieces: readonly Piece[], pads: readonly Place[]) {
  const joints = new Map<string, Joint>()
  const arcs = new Map<number, { first: number; last: number; at: Place }>()
  for (const piece of pieces) {
    const deg = directionOf(piece)
    if (piece.isArc) {
      const known = arcs.get(piece.object)
      if (known === undefined) arcs.set(piece.object, { first: deg, last: deg, at: [piece.bx, piece.by] })
      else known.last = deg
    }
    if (piece.endsAtA) addTo(joints, [piece.ax, piece.ay], piece, deg)
    if (piece.endsAtB) addTo(joints, [piece.bx, piece.by], piece, deg + 180)
  }
  const turns: { deg: number; at: Place }[] = []
  const widthChanges: { fromNm: number; toNm: number; at: Place }[] = []
  const ends: Place[] = []
  const junctions: Place[] = []
  for (const { first, last, at } of arcs.values()) {
    const deg = Math.abs(((last - first + 540) % 360) - 180)
    if (deg >= LEAST_TURN_DEG) turns.push({ deg, at })
  }
  for (const { at, pieces: meeting } of joints.values()) {
    if (!isInside(band.rings, at[0], at[1])) continue
    const isPad = pads.some(([x, y]) => Math.hypot(x - at[0], y - at[1]) <= JOINED_NM)
    const [one, other] = meeting
    if (one === undefined) continue
    if (meeting.length === 1) {
      const others = pieces.filter((piece) => piece !== one.piece && liesOn(piece, at))
      if (others.length > 0) junctions.push(at)
      else if (!isPad && endsThere(layer, at, one)) ends.push(at)
    } else if (other !== undefined && meeting.length === 2) {
      const deg = Math.abs(180 - Math.abs(((one.deg - other.deg + 540) % 360) - 180))
      if (deg >= LEAST_TURN_DEG) turns.push({ deg, at })
      const [fromNm, toNm] = [one.piece.widthNm, other.piece.widthNm]
      if (Math.abs(fromNm - toNm) > SAME_WIDTH_NM) widthChanges.push({ fromNm, toNm, at })
    } else if (meeting.length > 2) junctions.push(at)
  }
  return { turns, widthChanges, ends, junctions }
}

function addTo(joints: Map<string, Joint>, at: Place, piece: Piece, deg: number): void {
  const key = `${Math.round(at[0] / JOINED_NM)} ${Math.round(at[1] / JOINED_NM)}`
  const joint = joints.get(key)
  // The same stroke drawn twice joins nothing.
  if (joint === undefined) joints.set(key, { at, pieces: [{ piece, deg }] })
  else if (
    !joint.pieces.some(
      (known) => known.piece.widthNm === piece.widthNm && acute(known.deg - deg) < 1e-6 && isAlike(known.deg, deg),
    )
  )
    joint.pieces.push({ piece, deg })
}

const isAlike = (one: number, other: number): boolean => Math.abs(((((one - other) % 360) + 540) % 360) - 180) < 1e-6

/** Does a place lie on a stroke's middle, away from its ends? */
function liesOn({ ax, ay, bx, by }: Piece, [x, y]: Place): boolean {
  const square = (bx - ax) ** 2 + (by - ay) ** 2
  const share = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square
  if (share <= 0 || share >= 1) return false
  const off = Math.hypot(ax + (bx - ax) * share - x, ay + (by - ay) * share - y)
  const length = Math.sqrt(square)
  return off <= JOINED_NM && share * length > JOINED_NM && (1 - share) * length > JOINED_NM
}

/** Past its round end there is no copper. */
function endsThere({ islands }: StackedCopper, [x, y]: Place, { piece, deg }: Joint['pieces'][number]): boolean {
  const rad = ((deg + 180) * Math.PI) / 180
  const reach = piece.widthNm / 2 + PAST_END_NM
  return islands.at(Math.round(x + reach * Math.cos(rad)), Math.round(y + reach * Math.sin(rad))) === null
}

/** Flashes that reach into the bend. */
function listPads({ objects }: StackedCopper, { rings }: GroundBand, near: readonly number[]): Place[] {
  return near.flatMap((object): Place[] => {
    if (objects.kinds[object] !== FLASH || objects.isClear[object] === 1) return []
    const extent = extentOf(objects, object)
    if (extent === null) return []
    const [x = 0, y = 0] = objects.numbers.subarray(object * NUMBERS_PER_OBJECT, object * NUMBERS_PER_OBJECT + 2)
    const corners: Place[] = [
      [x, y],
      [extent[0], y],
      [extent[2], y],
      [x, extent[1]],
      [x, extent[3]],
    ]
    return corners.some((at) => isInside(rings, at[0], at[1])) ? [[x, y]] : []
  })
}

const directionOf = ({ ax, ay, bx, by }: Piece): number => (Math.atan2(by - ay, bx - ax) * 180) / Math.PI

function acute(deg: number): number {
  const turned = ((deg % 180) + 180) % 180
  return Math.min(turned, 180 - turned)
}
