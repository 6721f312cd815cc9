export type PointMm = readonly [xMm: number, yMm: number]
export type BoxMm = readonly [minXMm: number, minYMm: number, maxXMm: number, maxYMm: number]

export interface SizePx {
  readonly width: number
  readonly height: number
}

/** What part of the plane is seen, and from which side: seen from below x runs to the left. */
export interface View {
  readonly middleMm: PointMm
  readonly mmPerPx: number
  readonly isFromBelow: boolean
}

const MARGIN_PX = 24
/** At its nearest a pixel is half a micrometre: nearer than that the borders, followed to a micrometre, say nothing. */
const LEAST_MM_PER_PX = 5e-4
const MOST_MM_PER_PX = 10

const hold = (mmPerPx: number): number => Math.min(MOST_MM_PER_PX, Math.max(LEAST_MM_PER_PX, mmPerPx))

/** All of a box, with room round it. */
export function fitBox([minX, minY, maxX, maxY]: BoxMm, size: SizePx, isFromBelow: boolean): View {
  return {
    middleMm: [(minX + maxX) / 2, (minY + maxY) / 2],
    mmPerPx: hold(
      Math.max(
        (maxX - minX) / Math.max(1, size.width - 2 * MARGIN_PX),
        (maxY - minY) / Math.max(1, size.height - 2 * MARGIN_PX),
      ),
    ),
    isFromBelow,
  }
}

/** A place in the middle, with so much of the plane across the shorter side of the picture. */
export function viewAt(view: View, atMm: PointMm, acrossMm: number, { width, height }: SizePx): View {
  return { ...view, middleMm: atMm, mmPerPx: hold(acrossMm / Math.max(1, Math.min(width, height))) }
}

/** Nearer or farther, with one place staying where it is. */
export function zoomBy(view: View, factor: number, aboutMm: PointMm): View {
  const mmPerPx = hold(view.mmPerPx / factor)
  const share = mmPerPx / view.mmPerPx
  const [x, y] = view.middleMm
  return { ...view, mmPerPx, middleMm: [aboutMm[0] + (x - aboutMm[0]) * share, aboutMm[1] + (y - aboutMm[1]) * share] }
}

/** Moves what is seen with the pointer: pixels to the right and down. */
export function panBy(view: View, rightPx: number, downPx: number): View {
  const { middleMm, mmPerPx, isFromBelow } = view
  const right = isFromBelow ? -rightPx : rightPx
  return { ...view, middleMm: [middleMm[0] - right * mmPerPx, middleMm[1] + downPx * mmPerPx] }
}

export const turnOver = (view: View): View => ({ ...view, isFromBelow: !view.isFromBelow })

/** The place under a pixel; y points up in the plane and down on screen. */
export function placeOf(
  { middleMm, mmPerPx, isFromBelow }: View,
  size: SizePx,
  [x, y]: readonly [number, number],
): PointMm {
  const right = (x - size.width / 2) * mmPerPx
  return [middleMm[0] + (isFromBelow ? -right : right), middleMm[1] - (y - size.height / 2) * mmPerPx]
}

export function pixelOf({ middleMm, mmPerPx, isFromBelow }: View, size: SizePx, [x, y]: PointMm): [number, number] {
  const right = (x - middleMm[0]) / mmPerPx
  return [size.width / 2 + (isFromBelow ? -right : right), size.height / 2 - (y - middleMm[1]) / mmPerPx]
}

/** What of the plane is within the picture. */
export function windowOf({ middleMm: [x, y], mmPerPx }: View, { width, height }: SizePx): BoxMm {
  const [halfX, halfY] = [(width * mmPerPx) / 2, (height * mmPerPx) / 2]
  return [x - halfX, y - halfY, x + halfX, y + halfY]
}
