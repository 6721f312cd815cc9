import type { DrawingNode } from '../picture'
import type { RectMm } from './sheet-format'
import { joinStrips, type LaidBlock } from './strips'

/** Columns into which a sheet's drawing space is divided, and the space between them and between blocks. */
export const GRID_COLUMNS = 12
const GUTTER_MM = 5

export interface SheetGrid {
  readonly space: RectMm
  /** Kept free in the lower right corner. */
  readonly titleBlock: { readonly widthMm: number; readonly heightMm: number }
}

/** A block, or a part of one, in its place on a sheet. */
export interface PlacedPart {
  readonly blockId: string
  readonly title: string
  readonly rect: RectMm
  readonly nodes: readonly DrawingNode[]
}

export function getSpanWidth(grid: SheetGrid, span: number): number {
  const column = (grid.space.width - (GRID_COLUMNS - 1) * GUTTER_MM) / GRID_COLUMNS
  return span * column + (span - 1) * GUTTER_MM
}

/** Fewest columns that are as wide as wanted; all of them where nothing is. */
export function chooseSpan(grid: SheetGrid, wantedMm: number): number {
  for (let span = 1; span < GRID_COLUMNS; span += 1) if (getSpanWidth(grid, span) >= wantedMm) return span
  return GRID_COLUMNS
}

/** Height that a block of this span has to itself on an empty sheet. */
export function getRoom(grid: SheetGrid, span: number): number {
  return Math.max(...listSpots(grid, makeSkyline(grid), span).map(({ bottom, y }) => bottom - y))
}

export interface SpannedBlock {
  readonly laid: LaidBlock
  readonly span: number
}

/**
 * Puts blocks on sheets in their order: each goes to the highest place that is free, and what does not fit goes on at
 * the next place or sheet. Parts never overlap, for each takes its columns from the last part in them downwards.
 *
 * @returns parts per sheet; at least one sheet
 */
export function arrange(blocks: readonly SpannedBlock[], grid: SheetGrid): PlacedPart[][] {
  const sheets: PlacedPart[][] = [[]]
  let skyline = makeSkyline(grid)
  for (const { laid, span } of blocks) {
    let next = 0
    let isFresh = sheets.at(-1)?.length === 0
    while (next < laid.strips.length) {
      const head = next === 0 ? laid.head : laid.headContinued
      const rest = laid.strips.slice(next)
      const leastCount = Math.min(rest.length, next === 0 ? laid.leastStrips : 1)
      const restMm = sumHeights(rest)
      const leastMm = head.heightMm + sumHeights(rest.slice(0, leastCount))
      const spots = listSpots(grid, skyline, span)
      const spot =
        pickHighest(spots, head.heightMm + restMm) ??
        pickHighest(spots, leastMm) ??
        // On a sheet of its own a block is broken wherever it must be.
        (isFresh ? pickHighest(spots, head.heightMm + (rest[0]?.heightMm ?? 0)) : null)
      if (spot === null) {
        if (isFresh) throw new RangeError(`the block ${laid.id} does not fit on an empty sheet`)
        sheets.push([])
        skyline = makeSkyline(grid)
        isFresh = true
        continue
      }
      const count = countFitting(rest, spot.bottom - spot.y - head.heightMm)
      const whole = joinStrips([head, ...rest.slice(0, count)])
      const rect = { x: spot.x, y: spot.y, width: getSpanWidth(grid, span), height: whole.heightMm }
      sheets.at(-1)?.push({ blockId: laid.id, title: laid.title, rect, nodes: whole.draw(spot.x, spot.y) })
      for (let column = spot.column; column < spot.column + span; column += 1) {
        skyline[column] = spot.y + whole.heightMm + GUTTER_MM
      }
      next += count
      isFresh = false
    }
  }
  return sheets
}

function makeSkyline({ space }: SheetGrid): number[] {
  return Array.from({ length: GRID_COLUMNS }, () => space.y)
}

interface Spot {
  readonly column: number
  readonly x: number
  readonly y: number
  readonly bottom: number
}

function listSpots(grid: SheetGrid, skyline: readonly number[], span: number): Spot[] {
  const { space, titleBlock } = grid
  const step = getSpanWidth(grid, 1) + GUTTER_MM
  const width = getSpanWidth(grid, span)
  const titleLeft = space.x + space.width - titleBlock.widthMm
  return Array.from({ length: GRID_COLUMNS - span + 1 }, (_, column) => {
    const x = space.x + column * step
    const isAboveTitle = x + width > titleLeft - GUTTER_MM
    return {
      column,
      x,
      y: Math.max(...skyline.slice(column, column + span)),
      bottom: space.y + space.height - (isAboveTitle ? titleBlock.heightMm + GUTTER_MM : 0),
    }
  })
}

/** The highest place with enough room, of equally high ones the leftmost; null where there is none. */
function pickHighest(spots: readonly Spot[], neededMm: number): Spot | null {
  let best: Spot | null = null
  for (const spot of spots) {
    if (spot.bottom - spot.y + 1e-9 < neededMm) continue
    if (best === null || spot.y < best.y - 1e-9) best = spot
  }
  return best
}

function countFitting(strips: readonly { readonly heightMm: number }[], roomMm: number): number {
  let used = 0
  let count = 0
  for (const { heightMm } of strips) {
    used += heightMm
    if (used > roomMm + 1e-9) break
    count += 1
  }
  return count
}

function sumHeights(strips: readonly { readonly heightMm: number }[]): number {
  return strips.reduce((sum, { heightMm }) => sum + heightMm, 0)
}
