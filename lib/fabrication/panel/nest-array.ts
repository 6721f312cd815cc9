import { getAreaUm2, getBounds, type Polygon, requireWholeMicrometres, translate, turnBy } from '@/lib/geometry'
import type { PanelFormat } from './format'
import { type ExtraRoom, type NestedPart, type Nesting, NO_EXTRA, nestAlone } from './nest-part'
import type { Placement } from './placement'

/**
 * Lays a part on a panel format: by itself, or in the array in which it is delivered. An array is laid as a whole, frame included, and keeps the panel's spacing
 * from the next; within it the parts lie at its own steps.
 *
 * @returns placements and counts of parts, not of arrays
 * @throws  RangeError as `nestAlone`
 */
export function nestPart(part: NestedPart, format: PanelFormat, extra: ExtraRoom = NO_EXTRA): Nesting {
  const { array, cutOutAreaUm2 = 0 } = part
  const openFraction = cutOutAreaUm2 / getAreaUm2(part.outline)
  if (array === undefined) {
    const nesting = nestAlone(part, format, extra)
    return { ...nesting, utilisationFraction: nesting.utilisationFraction * (1 - openFraction) }
  }
  requireWholeMicrometres('outline', part.outline)
  const whole = nestAlone({ outline: array.outline, rollingDirection: part.rollingDirection }, format, extra)
  const each = array.stepsUm.length
  const parts = array.stepsUm.map(([dx, dy]) => translate(part.outline, [dx, dy]))
  const shareOfArray = (each * getAreaUm2(part.outline) * (1 - openFraction)) / getAreaUm2(array.outline)
  return {
    ...whole,
    placements: whole.placements.flatMap((placement) => parts.map((own) => placeIn(own, array.outline, placement))),
    count: whole.count * each,
    gridCount: whole.gridCount * each,
    mixedGridCount: whole.mixedGridCount * each,
    utilisationFraction: whole.utilisationFraction * shareOfArray,
  }
}

/** Where a part of an array comes to lie with it: both are turned alike, and moved as the array's bounds are. */
function placeIn(part: Polygon, array: Polygon, { xUm, yUm, rotationDeg }: Placement): Placement {
  const whole = getBounds(turnBy(array, rotationDeg))
  const own = getBounds(turnBy(part, rotationDeg))
  return { xUm: xUm + own.minX - whole.minX, yUm: yUm + own.minY - whole.minY, rotationDeg }
}
