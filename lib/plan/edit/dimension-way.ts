import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'

type Measured = Pick<Plan['dimensions'][number], 'direction' | 'fromMm' | 'toMm'>

/**
 * The line that a dimension measures along, its first two points; then what leads from its end to the other point. At a slant it is the line between both.
 */
export function dimensionWay({ direction, fromMm, toMm }: Measured): readonly [PointMm, PointMm, ...PointMm[]] {
  if (direction === 'along-x') return [fromMm, [toMm[0], fromMm[1]], toMm]
  if (direction === 'along-y') return [fromMm, [fromMm[0], toMm[1]], toMm]
  return [fromMm, toMm]
}

/** What a dimension measures, in mm: differences of what was typed without their last binary digits. */
export function measureDimension(dimension: Measured): number {
  const [[startX, startY], [endX, endY]] = dimensionWay(dimension)
  return Math.round(Math.hypot(endX - startX, endY - startY) * 1e6) / 1e6
}
