import type { Design } from '@/lib/engine'
import { findCrossing, flattenOutwards, type Polygon, tidy } from '@/lib/geometry'
import { areasOf } from '@/lib/plan'
import type { NestedPart } from './nest-part'

/** By this much a part may be taken as larger than its arcs are: far below any spacing of parts. Our choice. */
const ARC_ERROR_NM = 10_000
const NM_PER_UM = 1000

/**
 * The part as it is drawn in plan, its arcs held by polygons from outside, with the foil's direction along x or y. Null where no outline is drawn, or
 * where two of its edges come so near that the polygon would cross itself: then what was stated is used.
 */
export function readDrawnPart({ plan, features }: Design): NestedPart | null {
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
  return { outline, rollingDirection: deg === null ? statedDirection(features) : deg === 90 ? 'along-y' : 'along-x' }
}

function statedDirection({ outline }: Design['features']): NestedPart['rollingDirection'] {
  const stated = outline?.rollingDirection ?? null
  return stated === 'either' ? null : stated
}
