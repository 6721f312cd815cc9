import { boundsOf, edgesOfLoop } from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM, type PointMm } from '../document/primitives'
import { pathInNm } from '../document/to-geometry'

/** Parts in their steps, and the frame round them. */
export interface ArrayLayout {
  /** Lower left and upper right corner of the frame, or of the bounds of all parts where no frame is stated. */
  readonly lowMm: PointMm
  readonly highMm: PointMm
  /** By how much each part is moved from the drawn one, row by row. */
  readonly offsetsMm: readonly PointMm[]
  /** Whether every step between parts and the frame are stated; what is not counts as 0 above. */
  readonly isWhole: boolean
}

/** Null without an outline or an array. */
export function measureArray({ outline, array }: Plan): ArrayLayout | null {
  if (outline === null || array === null) return null
  const { minX, minY, maxX, maxY } = boundsOf(edgesOfLoop(pathInNm(outline)))
  const { columns, rows, columnStepMm, rowStepMm, frameMm } = array
  const frame = frameMm ?? 0
  const [stepX, stepY] = [columnStepMm ?? 0, rowStepMm ?? 0]
  return {
    lowMm: [minX / NM_PER_MM - frame, minY / NM_PER_MM - frame],
    highMm: [maxX / NM_PER_MM + (columns - 1) * stepX + frame, maxY / NM_PER_MM + (rows - 1) * stepY + frame],
    offsetsMm: Array.from(
      { length: columns * rows },
      (_, at): PointMm => [(at % columns) * stepX, Math.floor(at / columns) * stepY],
    ),
    isWhole: frameMm !== null && (columns === 1 || columnStepMm !== null) && (rows === 1 || rowStepMm !== null),
  }
}
