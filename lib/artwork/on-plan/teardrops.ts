import type { StackedCopper } from '../copper/copper-stack'
import { FLASH, LINE, NUMBERS_PER_OBJECT } from '../objects/objects'
import type { FlatPath } from '../shape/path'
import { isInside } from './rings'

type Place = readonly [xNm: number, yNm: number]

/** Round lands that a conductor runs into, and those of them where it does so without growing wider. */
export interface JoinedLands {
  readonly count: number
  readonly bare: readonly Place[]
}

/** A stroke that ends this near to the middle of a land runs into it. */
const MIDDLE_NM = 10_000
/** A conductor nearly as wide as its land has no neck to be kept. Our choice. */
const WIDE_FRACTION = 0.8
/** Looked at this far outside of the land's edge, and this far beside the conductor: a teardrop is wider there. Our choice, a tenth of the radius and 10 um. */
const PAST_EDGE = 1.1
const PAST_EDGE_NM = 10_000
const BESIDE_NM = 10_000
/** A stroke that ends before this many radii is part of the teardrop, or too short to say. */
const LEAST_LENGTH = 1.5

/** Lands of a layer within a piece of the plane. */
export function findJoinedLands(layer: StackedCopper, rings: readonly FlatPath[], ends: StrokeEnds): JoinedLands {
  const { objects, islands } = layer
  const bare: Place[] = []
  let count = 0
  for (let object = 0; object < objects.count; object += 1) {
    if (objects.kinds[object] !== FLASH || objects.isClear[object] === 1) continue
    const diameterNm = objects.apertures[objects.apertureAt[object] ?? -1]?.diameterNm ?? null
    if (diameterNm === null || diameterNm <= 0) continue
    const [x = 0, y = 0] = objects.numbers.subarray(object * NUMBERS_PER_OBJECT, object * NUMBERS_PER_OBJECT + 2)
    const radius = diameterNm / 2
    const necks = ends
      .near(x, y)
      .filter(({ widthNm, lengthNm }) => widthNm < WIDE_FRACTION * diameterNm && lengthNm >= LEAST_LENGTH * radius)
    if (necks.length === 0 || !isInside(rings, x, y)) continue
    count += 1
    const isBare = necks.some(({ ux, uy, widthNm }) => {
      const along = PAST_EDGE * radius + PAST_EDGE_NM
      const beside = widthNm / 2 + BESIDE_NM
      const isCopper = (side: number) =>
        islands.at(Math.round(x + ux * along - side * uy * beside), Math.round(y + uy * along + side * ux * beside)) !==
        null
      return !isCopper(1) || !isCopper(-1)
    })
    if (isBare) bare.push([x, y])
  }
  return { count, bare }
}

interface StrokeEnd {
  readonly xNm: number
  readonly yNm: number
  /** Away from the end. */
  readonly ux: number
  readonly uy: number
  readonly widthNm: number
  readonly lengthNm: number
}

/** Ends of a layer's straight strokes of round apertures, found by place. */
export class StrokeEnds {
  readonly #cells = new Map<string, StrokeEnd[]>()

  constructor({ objects }: StackedCopper) {
    for (let object = 0; object < objects.count; object += 1) {
      if (objects.kinds[object] !== LINE || objects.isClear[object] === 1) continue
      const widthNm = objects.apertures[objects.apertureAt[object] ?? -1]?.diameterNm ?? 0
      const from = object * NUMBERS_PER_OBJECT
      const [ax = 0, ay = 0, bx = 0, by = 0] = objects.numbers.subarray(from, from + 4)
      const lengthNm = Math.hypot(bx - ax, by - ay)
      if (widthNm <= 0 || lengthNm === 0) continue
      const [ux, uy] = [(bx - ax) / lengthNm, (by - ay) / lengthNm]
      this.#add({ xNm: ax, yNm: ay, ux, uy, widthNm, lengthNm })
      this.#add({ xNm: bx, yNm: by, ux: -ux, uy: -uy, widthNm, lengthNm })
    }
  }

  near(x: number, y: number): StrokeEnd[] {
    const [column, row] = [Math.floor(x / MIDDLE_NM), Math.floor(y / MIDDLE_NM)]
    const found: StrokeEnd[] = []
    for (let i = column - 1; i <= column + 1; i += 1)
      for (let j = row - 1; j <= row + 1; j += 1)
        for (const end of this.#cells.get(`${i} ${j}`) ?? [])
          if (Math.hypot(end.xNm - x, end.yNm - y) <= MIDDLE_NM) found.push(end)
    return found
  }

  #add(end: StrokeEnd): void {
    const key = `${Math.floor(end.xNm / MIDDLE_NM)} ${Math.floor(end.yNm / MIDDLE_NM)}`
    const there = this.#cells.get(key)
    if (there === undefined) this.#cells.set(key, [end])
    else there.push(end)
  }
}
