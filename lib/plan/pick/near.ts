import type { PointMm } from '../document/primitives'
import type { PlanListKey } from '../edit/plan-edit'
import type { Traced } from './traced'

export interface PickOptions {
  /** How near counts: pixels divided by the zoom. */
  readonly toleranceMm: number
  /** Lists that are not shown cannot be met. */
  readonly hidden?: ReadonlySet<PlanListKey | 'outline'>
}

export const isNearBox = ({ minX, minY, maxX, maxY }: Traced['box'], [x, y]: PointMm, by: number): boolean =>
  x >= minX - by && x <= maxX + by && y >= minY - by && y <= maxY + by
