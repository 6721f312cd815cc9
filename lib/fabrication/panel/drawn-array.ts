import type { Design } from '@/lib/engine'
import { coverByConvex, getBounds, makeNoFit, moveToOrigin, type Polygon, tidy, translate } from '@/lib/geometry'
import { measureArray } from '@/lib/plan'
import { toWholeUm } from './format'
import type { NestedArray } from './nest-part'

/** As in the search for lattices. */
const COVER = { maxPieces: 28, allowedExcessFraction: 0.002 }

/** An array as one piece; why there is none; or null where parts are delivered singly or nothing is said of it. */
export type ArrayReading =
  | { readonly outline: Polygon; readonly array: NestedArray }
  | { readonly reason: string }
  | null

/**
 * The drawn array, its frame and all of its parts as one piece, where parts are delivered in arrays.
 *
 * @param part  outline of one part in whole micrometres, turned by `turnRad` from the plan
 */
export function readDrawnArray({ plan, brief }: Design, part: Polygon, turnRad: number): ArrayReading {
  if (plan === null || brief.panelForm !== 'assembly-arrays') return null
  const layout = measureArray(plan)
  if (layout === null) return { reason: 'Parts are delivered in arrays, and none is drawn: they are laid singly.' }
  if (layout.offsetsMm.length < 2) return null
  if (!layout.isWhole)
    return { reason: 'The steps and the frame of the array are not all stated: parts are laid singly.' }
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)]
  const place = ([x, y]: readonly [number, number]): readonly [number, number] => [
    toWholeUm(x * cos - y * sin) + 0,
    toWholeUm(x * sin + y * cos) + 0,
  ]
  const offsets = layout.offsetsMm.map(place)
  if (haveOverlap(part, offsets))
    return { reason: 'The parts of the array lie over each other as drawn: parts are laid singly.' }
  const [low, high] = [layout.lowMm, layout.highMm]
  const frame = tidy(([low, [high[0], low[1]], high, [low[0], high[1]]] as const).map((corner) => place(corner)))
  const { minX, minY } = getBounds(frame)
  return {
    outline: moveToOrigin(frame),
    array: { part, parts: offsets.map(([x, y]) => translate(part, [x - minX, y - minY])) },
  }
}

/** Exact for outlines of few pieces, on the safe side for others. */
function haveOverlap(part: Polygon, offsets: readonly (readonly [number, number])[]): boolean {
  const { minX, minY, maxX, maxY } = getBounds(part)
  const [first = [0, 0], ...others] = offsets
  const near = others.filter(([x, y]) => Math.abs(x - first[0]) < maxX - minX && Math.abs(y - first[1]) < maxY - minY)
  if (near.length === 0) return false
  const { pieces } = coverByConvex(moveToOrigin(part), COVER)
  const noFit = makeNoFit(pieces, pieces, 0)
  return near.some(([x, y]) => noFit.isBlocked(x - first[0], y - first[1]))
}
