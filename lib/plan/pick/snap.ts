import { lengthOfEdge, nearestOnEdge, pointAt } from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM, type PointMm } from '../document/primitives'
import { toMm, toNm } from '../document/to-geometry'
import { fieldsOf, handlesOf } from '../edit/drawn'
import type { DrawnRef } from '../edit/plan-edit'
import { isNearBox, type PickOptions } from './near'
import { traceAll } from './traced'

/** Where a pointer is taken to, why, and the lines that show why. */
export interface Snap {
  readonly atMm: PointMm
  readonly to: 'point' | 'middle' | 'edge' | 'square' | 'grid' | null
  readonly guides: readonly (readonly [PointMm, PointMm])[]
}

export interface SnapOptions extends PickOptions {
  /** Null where there is no grid. */
  readonly gridMm: number | null
  /** Where the way that is being drawn comes from: right angles are taken from there. */
  readonly fromMm?: PointMm | null
  /** What is being moved does not hold itself. */
  readonly except?: DrawnRef | null
}

/**
 * Points win over middles, middles over edges, all of these over right angles and the grid; among alike ones the nearest. A right angle from
 * the point before meets an edge where both are in reach.
 */
export function snapAt(plan: Plan, atMm: PointMm, options: SnapOptions): Snap {
  const { toleranceMm, hidden, gridMm, fromMm = null, except = null } = options
  const near = traceAll(plan).filter(
    ({ ref, box }) => hidden?.has(ref.list) !== true && !isSameRef(ref, except) && isNearBox(box, atMm, toleranceMm),
  )
  const points = near.flatMap(({ ref }) => handlesOf(fieldsOf(plan, ref) ?? {}).map((handle) => handle.atMm))
  const point = nearest(points, atMm, toleranceMm)
  if (point !== null) return { atMm: point, to: 'point', guides: [] }
  const edges = near.flatMap((traced) => traced.edges)
  const middles = edges.filter((edge) => lengthOfEdge(edge) > 0).map((edge) => toMm(pointAt(edge, 0.5)))
  const middle = nearest(middles, atMm, toleranceMm)
  if (middle !== null) return { atMm: middle, to: 'middle', guides: [] }
  const square = fromMm === null ? null : squareFrom(fromMm, atMm, toleranceMm)
  const feet = edges.map((edge) => toMm(nearestOnEdge(edge, toNm(square ?? atMm)).point))
  const foot = nearest(feet, atMm, toleranceMm)
  if (foot !== null) {
    return { atMm: foot, to: 'edge', guides: square === null || fromMm === null ? [] : [[fromMm, square]] }
  }
  if (square !== null && fromMm !== null) {
    return { atMm: onGrid(square, fromMm, gridMm), to: 'square', guides: [[fromMm, square]] }
  }
  if (gridMm !== null) return { atMm: roundTo(atMm, gridMm), to: 'grid', guides: [] }
  return { atMm: roundTo(atMm, FREE_STEP_MM), to: null, guides: [] }
}

/** A hand draws no finer than this: our choice, so that free points read well. */
const FREE_STEP_MM = 0.01

const isSameRef = (ref: DrawnRef, other: DrawnRef | null): boolean =>
  other !== null &&
  ref.list === other.list &&
  (ref.list === 'outline' || other.list === 'outline' || ref.id === other.id)

function nearest(points: readonly PointMm[], [x, y]: PointMm, withinMm: number): PointMm | null {
  let best: PointMm | null = null
  let least = withinMm
  for (const point of points) {
    const distance = Math.hypot(point[0] - x, point[1] - y)
    if (distance <= least) {
      if (distance < least || best === null) best = point
      least = distance
    }
  }
  return best
}

function squareFrom([fx, fy]: PointMm, [x, y]: PointMm, withinMm: number): PointMm | null {
  const [dx, dy] = [Math.abs(x - fx), Math.abs(y - fy)]
  if (Math.min(dx, dy) > withinMm || Math.max(dx, dy) <= withinMm) return null
  return dx < dy ? [fx, y] : [x, fy]
}

/** Along the right angle only: the other coordinate is that of the point before. */
function onGrid([x, y]: PointMm, [fx, fy]: PointMm, gridMm: number | null): PointMm {
  const [gx, gy] = roundTo([x, y], gridMm ?? FREE_STEP_MM)
  return [x === fx ? fx : gx, y === fy ? fy : gy]
}

function roundTo([x, y]: PointMm, stepMm: number): PointMm {
  const round = (mm: number) => Math.round(Math.round(mm / stepMm) * stepMm * NM_PER_MM)
  return toMm([round(x), round(y)])
}
