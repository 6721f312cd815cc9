import type { Design } from '@/lib/engine'
import { findCrossing, flattenOutwards, type Polygon, signedAreaOf, tidy } from '@/lib/geometry'
import { areasOf } from '@/lib/plan'
import { readDrawnArray } from './drawn-array'
import type { NestedPart } from './nest-part'

/** By this much a part may be taken as larger than its arcs are: far below any spacing of parts. Our choice. */
const ARC_ERROR_NM = 10_000
const NM_PER_UM = 1000

/** A drawn part or its array as it is laid on panels, and why it is not laid in its array; empty where nothing is to be said. */
export interface DrawnPart {
  readonly part: NestedPart
  readonly note: string
}

/**
 * The part as it is drawn in plan, its arcs held by polygons from outside, with the foil's direction along x or y. Null where no outline is drawn, or
 * where two of its edges come so near that the polygon would cross itself: then what was stated is used. Parts that are delivered in arrays are laid in them, each with its frame as one piece.
 */
export function readDrawnPart(design: Design): DrawnPart | null {
  const { plan, features } = design
  const part = plan === null ? null : areasOf(plan).part
  if (plan === null || part === null) return null
  const deg = plan.rollingDirectionDeg
  const isSquare = deg === null || deg === 0 || deg === 90
  const rad = isSquare ? 0 : (-(deg ?? 0) * Math.PI) / 180
  const [cos, sin] = [Math.cos(rad), Math.sin(rad)]
  const outline: Polygon = tidy(
    flattenOutwards(part.outer, ARC_ERROR_NM).map(([x, y]): readonly [number, number] => [
      Math.round((x * cos - y * sin) / NM_PER_UM) + 0,
      Math.round((x * sin + y * cos) / NM_PER_UM) + 0,
    ]),
  )
  if (outline.length < 3 || findCrossing(outline) !== null) return null
  const rollingDirection = deg === null ? statedDirection(features) : deg === 90 ? 'along-y' : 'along-x'
  const windowsUm2 = part.holes.reduce((sum, edges) => sum + Math.abs(signedAreaOf(edges)), 0) / NM_PER_UM ** 2
  const kept = { rollingDirection, ...(windowsUm2 === 0 ? {} : { windowsUm2 }) }
  const inArray = readDrawnArray(design, outline, rad)
  if (inArray === null) return { part: { outline, ...kept }, note: '' }
  return 'reason' in inArray
    ? { part: { outline, ...kept }, note: inArray.reason }
    : { part: { ...inArray, ...kept }, note: '' }
}

function statedDirection({ outline }: Design['features']): NestedPart['rollingDirection'] {
  const stated = outline?.rollingDirection ?? null
  return stated === 'either' ? null : stated
}
