import { countOf, inSentence } from '@/lib/engine/units'
import {
  getAreaUm2,
  getBounds,
  isUprightRectangle,
  moveToOrigin,
  type Polygon,
  type QuarterTurnDeg,
  requireWholeMicrometres,
  tidy,
} from '@/lib/geometry'
import { placeFewParts } from './few-parts'
import { type FoilDirection, type PanelFormat, toWholePanel, type WholePanel } from './format'
import { nestOutline } from './nest-outline'
import type { Placement } from './placement'
import { countBlocks, type GridBlock, packBothWays, packOneWay, type RectangleTask } from './rectangle-grid'

export const PART_ROLLING_DIRECTIONS = ['along-x', 'along-y'] as const
export type PartRollingDirection = (typeof PART_ROLLING_DIRECTIONS)[number]

/** What is laid on a panel. */
export interface NestedPart {
  /** Simple polygon in whole micrometres, in either direction. */
  readonly outline: Polygon
  /** Which of the part's axes must lie along the foil's rolling direction; null where it does not matter. */
  readonly rollingDirection: PartRollingDirection | null
  /** Area of the windows in one part, in which nothing is laid and which is no part of it; left out where it has none. */
  readonly windowsUm2?: number
  /** Parts that are laid as one piece, whose frame is then the outline; left out for single parts. */
  readonly array?: NestedArray
}

/** The parts of an array. */
export interface NestedArray {
  /** One part by itself, as it lies in the array. */
  readonly part: Polygon
  /** Each part in its place, from the lower left corner of the frame's bounds. */
  readonly parts: readonly Polygon[]
}

/** What panels have to give way to: registration asks for more room. */
export interface ExtraRoom {
  readonly extraMarginMm: number
  readonly extraSpacingMm: number
}

export type NestingMethod = 'grid' | 'mixed-grid' | 'double-lattice' | 'two-lattices' | 'one-by-one'

export interface Nesting {
  /** Of parts, or of arrays where parts are laid in them. */
  readonly placements: readonly Placement[]
  /** Parts, those of all arrays counted one by one. */
  readonly count: number
  /** Area of the parts over that of the whole panel, margins included; 0 to 1. */
  readonly utilisationFraction: number
  readonly method: NestingMethod
  /** What rectangle grids alone come to: the bounds of the part, all one way, and both ways mixed. */
  readonly gridCount: number
  readonly mixedGridCount: number
  readonly turnsDeg: readonly QuarterTurnDeg[]
  /** Share of the part's area that was added to nest it, on the safe side; 0 is exact. */
  readonly excessFraction: number
  /** What a reader should know: why a turn was left out, that the foil's direction is unknown. */
  readonly notes: readonly string[]
}

/**
 * Lays a part on a panel format as often as it goes: rectangle grids of its bounds, one way and mixed, and double lattices
 * of its true outline; where a panel holds a few parts alone, also each in a place of its own. The result is never worse than the best rectangle grid, which it falls back to.
 *
 * @returns the same placements on every machine: whole micrometres decide, no clock and no chance
 * @throws  RangeError for an outline that is not a simple polygon in whole micrometres
 * Source   counts along a line: exact arithmetic; lattices: see searchLattices
 */
export function nestPart(part: NestedPart, format: PanelFormat, extra: ExtraRoom = NO_EXTRA): Nesting {
  const { array, ...single } = part
  const { windowsUm2 = 0, ...piece } = single
  if (array === undefined) return nestPiece(single, format, extra)
  const pieces = nestPiece(piece, format, extra)
  const { count: singly } = nestPiece({ ...piece, outline: array.part }, format, extra)
  const each = array.parts.length
  const { minX, minY, maxX, maxY } = getBounds(piece.outline)
  const panelUm2 = toWholePanel(format).widthUm * toWholePanel(format).heightUm
  return {
    ...pieces,
    count: pieces.count * each,
    gridCount: pieces.gridCount * each,
    mixedGridCount: pieces.mixedGridCount * each,
    utilisationFraction: (pieces.count * each * (getAreaUm2(array.part) - windowsUm2)) / panelUm2,
    notes: [
      `${countOf(pieces.count, 'array')} of ${countOf(each, 'part')}, ${inSentence((maxX - minX) / 1000)} × ${inSentence((maxY - minY) / 1000, 'mm')} with the frame. Laid singly it would be ${countOf(singly, 'part')}.`,
      ...pieces.notes,
    ],
  }
}

function nestPiece(part: Omit<NestedPart, 'array'>, format: PanelFormat, extra: ExtraRoom): Nesting {
  requireWholeMicrometres('outline', part.outline)
  const outline = moveToOrigin(tidy(part.outline))
  const panel = makeRoom(toWholePanel(format), extra)
  const { turnsDeg, notes } = findTurns(panel.turnsDeg, panel.foilRollingDirection, part.rollingDirection)
  const areaUm2 = getAreaUm2(outline) - (part.windowsUm2 ?? 0)
  const describe = (
    found: Pick<Nesting, 'placements' | 'method' | 'gridCount' | 'mixedGridCount' | 'excessFraction'>,
  ): Nesting => ({
    ...found,
    placements: found.placements.map((each) => ({
      ...each,
      xUm: each.xUm + panel.originX,
      yUm: each.yUm + panel.originY,
    })),
    count: found.placements.length,
    utilisationFraction: (found.placements.length * areaUm2) / (panel.widthUm * panel.heightUm),
    turnsDeg,
    notes,
  })
  if (turnsDeg.length === 0 || panel.usableWidthUm <= 0 || panel.usableHeightUm <= 0) {
    return describe({ placements: [], method: 'grid', gridCount: 0, mixedGridCount: 0, excessFraction: 0 })
  }
  const { maxX, maxY } = getBounds(outline)
  const task: RectangleTask = { ...panel, partWidthUm: maxX, partHeightUm: maxY }
  const plain = packGrid(task, turnsDeg)
  const mixed = packMixed(task, turnsDeg, plain)
  const [gridCount, mixedGridCount] = [countBlocks(plain), countBlocks(mixed)]
  const isMixedBetter = mixedGridCount > gridCount
  const ofRectangles = describe({
    placements: placeBlocks(isMixedBetter ? mixed : plain, task, turnsDeg),
    method: isMixedBetter ? 'mixed-grid' : 'grid',
    gridCount,
    mixedGridCount,
    excessFraction: 0,
  })
  if (isUprightRectangle(outline)) return ofRectangles
  const nested = nestOutline({ ...panel, outline, turnsDeg })
  const most = Math.max(nested.placements.length, ofRectangles.count)
  const few = placeFewParts({ ...panel, outline, turnsDeg }, most)
  if (few !== null) {
    const { placements, excessFraction } = few
    return describe({ placements, method: 'one-by-one', gridCount, mixedGridCount, excessFraction })
  }
  if (nested.placements.length <= ofRectangles.count) return ofRectangles
  return describe({
    placements: nested.placements,
    method: nested.isInTwoBlocks ? 'two-lattices' : 'double-lattice',
    gridCount,
    mixedGridCount,
    excessFraction: nested.excessFraction,
  })
}

export const NO_EXTRA: ExtraRoom = { extraMarginMm: 0, extraSpacingMm: 0 }

function makeRoom(panel: WholePanel, { extraMarginMm, extraSpacingMm }: ExtraRoom): WholePanel {
  const extraUm = Math.round(extraMarginMm * 1000)
  return {
    ...panel,
    originX: panel.originX + extraUm,
    originY: panel.originY + extraUm,
    usableWidthUm: panel.usableWidthUm - 2 * extraUm,
    usableHeightUm: panel.usableHeightUm - 2 * extraUm,
    spacingUm: panel.spacingUm + Math.round(extraSpacingMm * 1000),
  }
}

/**
 * The panel's turns that lay the part's direction along the foil's. A part along x lies along the panel's width unturned
 * and turned by half.
 */
function findTurns(
  allowedDeg: readonly QuarterTurnDeg[],
  foil: FoilDirection | null,
  part: PartRollingDirection | null,
): { turnsDeg: readonly QuarterTurnDeg[]; notes: string[] } {
  if (part === null) return { turnsDeg: allowedDeg, notes: [] }
  if (foil === null) {
    return {
      turnsDeg: allowedDeg,
      notes: ['The foil’s rolling direction on this panel is not stated: every turn was allowed.'],
    }
  }
  const isUnturned = (part === 'along-x') === (foil === 'along-width')
  const turnsDeg = allowedDeg.filter((turn) => (turn % 180 === 0) === isUnturned)
  if (turnsDeg.length === allowedDeg.length) return { turnsDeg, notes: [] }
  return {
    turnsDeg,
    notes: [
      turnsDeg.length === 0
        ? 'No turn that this panel allows lays the part along the foil’s rolling direction.'
        : 'Turns across the foil’s rolling direction were left out.',
    ],
  }
}

const isAcross = (turnDeg: QuarterTurnDeg): boolean => turnDeg % 180 !== 0

function packGrid(task: RectangleTask, turnsDeg: readonly QuarterTurnDeg[]): GridBlock[] {
  let best: GridBlock[] = []
  for (const turned of [false, true]) {
    if (!turnsDeg.some((turn) => isAcross(turn) === turned)) continue
    const blocks = packOneWay(task, turned)
    if (countBlocks(blocks) > countBlocks(best)) best = blocks
  }
  return best
}

function packMixed(task: RectangleTask, turnsDeg: readonly QuarterTurnDeg[], plain: GridBlock[]): GridBlock[] {
  return turnsDeg.some(isAcross) && turnsDeg.some((turn) => !isAcross(turn)) ? packBothWays(task) : plain
}

function placeBlocks(
  blocks: readonly GridBlock[],
  task: RectangleTask,
  turnsDeg: readonly QuarterTurnDeg[],
): Placement[] {
  return blocks.flatMap(({ xUm, yUm, columns, rows, turned }) => {
    const rotationDeg = turnsDeg.find((turn) => isAcross(turn) === turned) ?? 0
    const [acrossUm, upUm] = turned ? [task.partHeightUm, task.partWidthUm] : [task.partWidthUm, task.partHeightUm]
    return Array.from({ length: columns * rows }, (_, index) => ({
      xUm: xUm + (index % columns) * (acrossUm + task.spacingUm),
      yUm: yUm + Math.floor(index / columns) * (upUm + task.spacingUm),
      rotationDeg,
    }))
  })
}
