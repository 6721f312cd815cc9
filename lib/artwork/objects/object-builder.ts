import type { ApertureUse } from '../apertures/aperture'
import { LARGEST_COORDINATE_NM } from '../limits'
import { growBytes, growIndices, growIntegers } from './growable'
import {
  ARC_CLOCKWISE,
  ARC_COUNTERCLOCKWISE,
  FLASH,
  type LayerObjects,
  NUMBERS_PER_CORNER,
  NUMBERS_PER_OBJECT,
  REGION,
} from './objects'
import { matrixOf, type Placement } from './placement'

/** How a use of an aperture looks when the block that holds it is placed. */
export type PlaceAperture = (apertureAt: number, placement: Placement) => number

/** Takes objects one by one. Blocks and repeats have one of their own, which is then placed in the one around it. */
export class ObjectBuilder {
  count = 0
  /** Whether something was placed farther out than coordinates reach, and left out. */
  hasLeftOut = false
  readonly #kinds = growBytes()
  readonly #isClear = growBytes()
  readonly #numbers = growIntegers()
  readonly #apertureAt = growIntegers()
  readonly #attributesAt = growIntegers()
  readonly #lines = growIndices()
  readonly #contourStarts = growIndices()
  readonly #corners = growIntegers()
  readonly #cornerKinds = growBytes()

  get contourCount(): number {
    return this.#contourStarts.length
  }

  /** Numbers as `LayerObjects` explains. */
  add(
    kind: number,
    isClear: boolean,
    apertureAt: number,
    attributesAt: number,
    line: number,
    n0: number,
    n1: number,
    n2 = 0,
    n3 = 0,
    n4 = 0,
    n5 = 0,
  ): void {
    this.#kinds.push(kind)
    this.#isClear.push(isClear ? 1 : 0)
    this.#apertureAt.push(apertureAt)
    this.#attributesAt.push(attributesAt)
    this.#lines.push(line)
    const numbers = this.#numbers
    numbers.push(n0)
    numbers.push(n1)
    numbers.push(n2)
    numbers.push(n3)
    numbers.push(n4)
    numbers.push(n5)
    this.count += 1
  }

  beginContour(): void {
    this.#contourStarts.push(this.#cornerKinds.length)
  }

  addCorner(kind: number, xNm: number, yNm: number, centreXNm: number, centreYNm: number): void {
    this.#cornerKinds.push(kind)
    this.#corners.push(xNm)
    this.#corners.push(yNm)
    this.#corners.push(centreXNm)
    this.#corners.push(centreYNm)
  }

  /** Adds all that another builder holds, moved. */
  place(source: ObjectBuilder, placement: Placement, placeAperture: PlaceAperture, line: number): void {
    const { a, b, c, d } = matrixOf(placement)
    const { xNm, yNm, isMirrored, swapsPolarity } = placement
    const x = (px: number, py: number) => Math.round(a * px + b * py) + xNm
    const y = (px: number, py: number) => Math.round(c * px + d * py) + yNm
    const isWithin = (value: number) => Math.abs(value) <= LARGEST_COORDINATE_NM
    // A block may be placed in itself by nobody: its count stands still while it is read.
    const count = source.count
    for (let index = 0; index < count; index += 1) {
      const kind = source.#kinds.at(index)
      const n = (at: number) => source.#numbers.at(index * NUMBERS_PER_OBJECT + at)
      const isClear = (source.#isClear.at(index) === 1) !== swapsPolarity
      const attributesAt = source.#attributesAt.at(index)
      if (kind === REGION) {
        const firstContour = this.contourCount
        for (let contour = n(0); contour < n(0) + n(1); contour += 1)
          this.#placeContour(source, contour, placement, x, y)
        this.add(REGION, isClear, -1, attributesAt, line, firstContour, n(1))
        continue
      }
      const toX = x(n(0), n(1))
      const toY = y(n(0), n(1))
      const endX = kind === FLASH ? toX : x(n(2), n(3))
      const endY = kind === FLASH ? toY : y(n(2), n(3))
      if (![toX, toY, endX, endY].every(isWithin)) {
        this.hasLeftOut = true
        continue
      }
      const apertureAt = placeAperture(source.#apertureAt.at(index), placement)
      if (kind === FLASH) this.add(FLASH, isClear, apertureAt, attributesAt, line, toX, toY)
      else {
        const turned = isMirrored ? mirroredKind(kind) : kind
        this.add(turned, isClear, apertureAt, attributesAt, line, toX, toY, endX, endY, x(n(4), n(5)), y(n(4), n(5)))
      }
    }
  }

  finish(apertures: readonly ApertureUse[], attributeSets: readonly (readonly string[])[]): LayerObjects {
    this.beginContour()
    return {
      count: this.count,
      kinds: this.#kinds.finish(),
      isClear: this.#isClear.finish(),
      numbers: this.#numbers.finish(),
      apertureAt: this.#apertureAt.finish(),
      attributesAt: this.#attributesAt.finish(),
      lines: this.#lines.finish(),
      contourStarts: this.#contourStarts.finish(),
      corners: this.#corners.finish(),
      cornerKinds: this.#cornerKinds.finish(),
      apertures,
      attributeSets,
    }
  }

  /** How many corners the contours hold: they count like objects where blocks repeat them. */
  get cornerCount(): number {
    return this.#cornerKinds.length
  }

  #placeContour(
    source: ObjectBuilder,
    contour: number,
    { isMirrored }: Placement,
    x: (px: number, py: number) => number,
    y: (px: number, py: number) => number,
  ): void {
    this.beginContour()
    const end = contour + 1 < source.contourCount ? source.#contourStarts.at(contour + 1) : source.cornerCount
    for (let corner = source.#contourStarts.at(contour); corner < end; corner += 1) {
      const kind = source.#cornerKinds.at(corner)
      const n = (at: number) => source.#corners.at(corner * NUMBERS_PER_CORNER + at)
      this.addCorner(isMirrored ? mirroredKind(kind) : kind, x(n(0), n(1)), y(n(0), n(1)), x(n(2), n(3)), y(n(2), n(3)))
    }
  }
}

/** A mirror turns arcs round; a turn does not. */
function mirroredKind(kind: number): number {
  if (kind === ARC_CLOCKWISE) return ARC_COUNTERCLOCKWISE
  return kind === ARC_COUNTERCLOCKWISE ? ARC_CLOCKWISE : kind
}
