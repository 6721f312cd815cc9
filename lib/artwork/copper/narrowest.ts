import { FLASH, NUMBERS_PER_OBJECT, REGION } from '../objects/objects'
import type { StackedCopper } from './copper-stack'

/** Looked at this far beside a stroke: is there an edge, or is it hidden in a plane? */
const BESIDE_NM = 5000
/** Strokes that are looked at, from the narrowest up: where all of these only fill planes, the rest are left. */
const MOST_LOOKED_AT = 20_000

export interface NarrowestConductor {
  readonly widthNm: number
  readonly xNm: number
  readonly yNm: number
}

/** The narrowest stroke of a round aperture with no copper on either side: a conductor, and none of the strokes that fill a plane. Null where there is none. */
export function findNarrowestConductor({ objects, islands }: StackedCopper): NarrowestConductor | null {
  const strokes: { object: number; widthNm: number }[] = []
  for (let object = 0; object < objects.count; object += 1) {
    const kind = objects.kinds[object]
    if (objects.isClear[object] === 1 || kind === FLASH || kind === REGION) continue
    const widthNm = objects.apertures[objects.apertureAt[object] ?? -1]?.diameterNm ?? 0
    if (widthNm > 0) strokes.push({ object, widthNm })
  }
  strokes.sort((one, other) => one.widthNm - other.widthNm)
  for (const { object, widthNm } of strokes.slice(0, MOST_LOOKED_AT)) {
    const from = object * NUMBERS_PER_OBJECT
    const [ax = 0, ay = 0, bx = 0, by = 0] = objects.numbers.subarray(from, from + 4)
    const length = Math.hypot(bx - ax, by - ay)
    // Shorter ones hide in what they join.
    if (length < 2 * widthNm) continue
    const [x, y] = [Math.round((ax + bx) / 2), Math.round((ay + by) / 2)]
    const reach = widthNm / 2 + BESIDE_NM
    const [dx, dy] = [(-(by - ay) / length) * reach, ((bx - ax) / length) * reach]
    const isFree = (sign: number) => islands.at(Math.round(x + sign * dx), Math.round(y + sign * dy)) === null
    if (islands.at(x, y) !== null && isFree(1) && isFree(-1)) return { widthNm, xNm: x, yNm: y }
  }
  return null
}
