import type { ExtentNm } from '../apertures/aperture'
import { sweepOf } from '../gerber/arcs'
import {
  ARC_CLOCKWISE,
  FLASH,
  type LayerObjects,
  LINE,
  NUMBERS_PER_CORNER,
  NUMBERS_PER_OBJECT,
  REGION,
} from '../objects/objects'

/** A box that grows. */
export class Box {
  minX = Infinity
  minY = Infinity
  maxX = -Infinity
  maxY = -Infinity

  include(x: number, y: number): void {
    if (x < this.minX) this.minX = x
    if (x > this.maxX) this.maxX = x
    if (y < this.minY) this.minY = y
    if (y > this.maxY) this.maxY = y
  }

  /** The points of an arc that lie farthest out: its ends, and where it crosses the axes through its centre. */
  includeArc(isClockwise: boolean, x0: number, y0: number, x1: number, y1: number, cx: number, cy: number): void {
    this.include(x0, y0)
    this.include(x1, y1)
    const radius = Math.hypot(x0 - cx, y0 - cy)
    const isFull = x0 === x1 && y0 === y1
    const sweep = isFull ? 2 * Math.PI : sweepOf(x0 - cx, y0 - cy, x1 - cx, y1 - cy, isClockwise)
    for (const [dx, dy] of [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const) {
      if (isFull || sweepOf(x0 - cx, y0 - cy, dx, dy, isClockwise) <= sweep)
        this.include(cx + radius * dx, cy + radius * dy)
    }
  }
}

/** What an object covers at most, aperture and bulge of arcs included; null where its aperture draws nothing. */
export function extentOf(objects: LayerObjects, index: number): ExtentNm | null {
  const kind = objects.kinds[index] ?? 0
  const n = (offset: number) => objects.numbers[index * NUMBERS_PER_OBJECT + offset] ?? 0
  const box = new Box()
  if (kind === REGION) {
    const end = objects.contourStarts[n(0) + n(1)] ?? 0
    for (let corner = objects.contourStarts[n(0)] ?? 0; corner < end; corner += 1) {
      const c = (offset: number) => objects.corners[corner * NUMBERS_PER_CORNER + offset] ?? 0
      const cornerKind = objects.cornerKinds[corner] ?? 0
      if (cornerKind > LINE)
        box.includeArc(
          cornerKind === ARC_CLOCKWISE,
          c(-NUMBERS_PER_CORNER),
          c(1 - NUMBERS_PER_CORNER),
          c(0),
          c(1),
          c(2),
          c(3),
        )
      else box.include(c(0), c(1))
    }
    return [box.minX, box.minY, box.maxX, box.maxY]
  }
  const own = objects.apertures[objects.apertureAt[index] ?? 0]?.extentNm
  if (own === undefined || own === null) return null
  box.include(n(0), n(1))
  if (kind === LINE) box.include(n(2), n(3))
  else if (kind !== FLASH) box.includeArc(kind === ARC_CLOCKWISE, n(0), n(1), n(2), n(3), n(4), n(5))
  return [box.minX + own[0], box.minY + own[1], box.maxX + own[2], box.maxY + own[3]]
}

/** What the dark objects of a layer cover at most; null where there are none. */
export function extentOfLayer(objects: LayerObjects): ExtentNm | null {
  const box = new Box()
  for (let index = 0; index < objects.count; index += 1) {
    if (objects.isClear[index] === 1) continue
    const extent = extentOf(objects, index)
    if (extent === null) continue
    box.include(extent[0], extent[1])
    box.include(extent[2], extent[3])
  }
  return box.minX > box.maxX ? null : [box.minX, box.minY, box.maxX, box.maxY]
}
