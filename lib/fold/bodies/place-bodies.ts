import { type FoldedPart, placeInBand } from '../kinematics/fold-part'
import { movePoint } from '../kinematics/pose'
import type { Vector } from '../kinematics/vector'
import type { FlatBody, FlatPrism } from './flat-bodies'

export interface Box {
  readonly low: Vector
  readonly high: Vector
}

export interface PlacedPrism extends Pick<FlatPrism, 'leaf'> {
  readonly corners: readonly Vector[]
  readonly flat: readonly Vector[]
  readonly sagMm: number
  readonly box: Box
}

export interface PlacedBody {
  readonly body: FlatBody
  readonly prisms: readonly PlacedPrism[]
  readonly box: Box
}

/** Corners of each prism where the fold brings them. */
export function placeBody(folded: FoldedPart, body: FlatBody): PlacedBody {
  const place = placerOf(folded, body)
  const prisms = body.prisms.map(({ corners, sagMm, leaf }) => {
    const placed = corners.map(place)
    return { corners: placed, flat: corners, sagMm, leaf, box: growBox(boxOf(placed), sagMm) }
  })
  return { body, prisms, box: joinBoxes(prisms.map(({ box }) => box)) }
}

function placerOf(folded: FoldedPart, { id, carrier }: FlatBody): (point: Vector) => Vector {
  if ('plateId' in carrier) {
    const pose = folded.plates.get(carrier.plateId)
    if (pose === undefined) throw new RangeError(`"${id}" stands on plate "${carrier.plateId}", which there is not`)
    return (point) => movePoint(pose, point)
  }
  const band = folded.bands.get(carrier.bandId)
  if (band === undefined) throw new RangeError(`"${id}" is cut from band "${carrier.bandId}", which there is not`)
  return (point) => placeInBand(band, point)
}

const flatBoxes = new WeakMap<readonly Vector[], Box>()

/** Box round the flat corners of a prism, which are the same at every state of the fold. */
export function flatBoxOf({ flat }: PlacedPrism): Box {
  const known = flatBoxes.get(flat)
  if (known !== undefined) return known
  const made = boxOf(flat)
  flatBoxes.set(flat, made)
  return made
}

function boxOf(points: readonly Vector[]): Box {
  const bound = (pick: (...values: number[]) => number): Vector => [
    points.reduce((found, [x]) => pick(found, x), points[0]?.[0] ?? 0),
    points.reduce((found, [, y]) => pick(found, y), points[0]?.[1] ?? 0),
    points.reduce((found, [, , z]) => pick(found, z), points[0]?.[2] ?? 0),
  ]
  return { low: bound(Math.min), high: bound(Math.max) }
}

export function joinBoxes(boxes: readonly Box[]): Box {
  return boxOf(boxes.flatMap(({ low, high }) => [low, high]))
}

function growBox({ low, high }: Box, byMm: number): Box {
  return {
    low: [low[0] - byMm, low[1] - byMm, low[2] - byMm],
    high: [high[0] + byMm, high[1] + byMm, high[2] + byMm],
  }
}

/** Least distance of two boxes along any axis: a lower bound of the distance of what they hold. */
export function boxGapMm(a: Box, b: Box): number {
  let gap = 0
  for (const axis of [0, 1, 2] as const) {
    gap = Math.max(gap, b.low[axis] - a.high[axis], a.low[axis] - b.high[axis])
  }
  return gap
}
