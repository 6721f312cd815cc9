import type { Design } from '@/lib/engine'
import { boundsOf, findCrossing, flattenOutwards, type Polygon, type Region, signedAreaOf, tidy } from '@/lib/geometry'
import { areasOf, NM_PER_MM, type Plan } from '@/lib/plan'
import type { NestedPart, PartArray } from './nest-part'

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
  const turn = ([x, y]: readonly [number, number]): readonly [number, number] => [
    Math.round((x * cos - y * sin) / NM_PER_UM) + 0,
    Math.round((x * sin + y * cos) / NM_PER_UM) + 0,
  ]
  const outline: Polygon = tidy(flattenOutwards(part.outer, ARC_ERROR_NM).map(turn))
  if (outline.length < 3 || findCrossing(outline) !== null) return null
  const array = readArray(plan.array, part, turn)
  const cutOutAreaUm2 = Math.round(
    part.holes.reduce((sum, hole) => sum + Math.abs(signedAreaOf(hole)), 0) / NM_PER_UM ** 2,
  )
  return {
    outline,
    rollingDirection: deg === null ? statedDirection(features) : deg === 90 ? 'along-y' : 'along-x',
    ...(cutOutAreaUm2 === 0 ? {} : { cutOutAreaUm2 }),
    ...(array === null ? {} : { array }),
  }
}

/** Null without an array, with one of a single part, and where a step is not stated: the part is then laid by itself. */
function readArray(
  array: Plan['array'],
  part: Region,
  turn: (point: readonly [number, number]) => readonly [number, number],
): PartArray | null {
  if (array === null || isArrayOpen(array) || array.columns * array.rows === 1) return null
  const [column, row] = [(array.columnStepMm ?? 0) * NM_PER_MM, (array.rowStepMm ?? 0) * NM_PER_MM]
  const frame = (array.frameMm ?? 0) * NM_PER_MM
  const { minX, minY, maxX, maxY } = boundsOf(part.outer)
  const [right, top] = [maxX + (array.columns - 1) * column + frame, maxY + (array.rows - 1) * row + frame]
  const corners = [
    [minX - frame, minY - frame],
    [right, minY - frame],
    [right, top],
    [minX - frame, top],
  ] as const
  return {
    outline: corners.map(turn),
    stepsUm: Array.from({ length: array.columns * array.rows }, (_, at) =>
      turn([(at % array.columns) * column, Math.floor(at / array.columns) * row]),
    ),
  }
}

/** A step between its parts is not stated. */
export const isArrayOpen = ({ columns, rows, columnStepMm, rowStepMm }: NonNullable<Plan['array']>): boolean =>
  (columns > 1 && columnStepMm === null) || (rows > 1 && rowStepMm === null)

function statedDirection({ outline }: Design['features']): NestedPart['rollingDirection'] {
  const stated = outline?.rollingDirection ?? null
  return stated === 'either' ? null : stated
}
