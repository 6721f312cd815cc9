import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'

type Measured = Pick<Plan['dimensions'][number], 'direction' | 'fromMm' | 'toMm'>

/** The line that a dimension measures along, from where it begins; then what leads from its end to the other point. At a slant it is the line between both. */
export function dimensionWay({ direction, fromMm, toMm }: Measured): readonly PointMm[] {
  if (direction === 'along-x') return [fromMm, [toMm[0], fromMm[1]], toMm]
  if (direction === 'along-y') return [fromMm, [fromMm[0], toMm[1]], toMm]
  return [fromMm, toMm]
}
