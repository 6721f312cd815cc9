import type { Design } from '@/lib/engine'
import type { Palette } from '../palette'
import { type DrawingNode, makeNode, roundPx } from '../picture'
import type { Point } from './frame'

/** Widths of lines, in millimetres of paper. Our choices. */
export const EDGE_MM = 0.5
export const FINE_MM = 0.18
export const BEND_MM = 0.35
/** Lines away from the reader are ridges, lines towards the reader valleys: the dashes of paper models. */
export const RIDGE_DASHES_MM = [6, 1.2, 0.8, 1.2]
export const VALLEY_DASHES_MM = [2.4, 1.4]

const ZONE_FILLS = {
  rigid: 'laminate',
  stiffened: 'stiffener',
  finger: 'copper',
  flex: 'film',
} as const satisfies Record<string, keyof Palette>

export function fillOfZone(design: Design, zoneId: string | null, palette: Palette): string {
  const kind = design.construction.zones.find(({ id }) => id === zoneId)?.kind
  return kind === undefined ? palette.allowed : palette[ZONE_FILLS[kind]]
}

interface Pen {
  readonly palette: Palette
  /** Picture measures in a millimetre of paper. */
  readonly perMm: number
}

/** Half of the side of a tear stop's mark, in mm of paper. Our choice. */
export const TEAR_STOP_MM = 0.7

/** A square that marks where a tear stop is. What form it has is not in the design. */
export function drawTearStop([x, y]: Point, { palette, perMm }: Pen): DrawingNode {
  const half = TEAR_STOP_MM * perMm
  return makeNode('path', {
    d: `M${roundPx(x - half)},${roundPx(y - half)}L${roundPx(x + half)},${roundPx(y - half)}L${roundPx(x + half)},${roundPx(y + half)}L${roundPx(x - half)},${roundPx(y + half)}Z`,
    fill: palette.copper,
    stroke: palette.ink,
    'stroke-width': FINE_MM * perMm,
  })
}
