/** A block of upright rectangles in rows and columns; `turned` ones lie across. */
export interface GridBlock {
  readonly xUm: number
  readonly yUm: number
  readonly columns: number
  readonly rows: number
  readonly turned: boolean
}

/** What rectangles are packed into, all in whole micrometres. */
export interface RectangleTask {
  readonly usableWidthUm: number
  readonly usableHeightUm: number
  readonly partWidthUm: number
  readonly partHeightUm: number
  readonly spacingUm: number
}

/**
 * Most parts that fit in a row: floor((U + s)/(p + s)), from n p + (n - 1) s <= U. In whole micrometres, because binary
 * fractions lose parts (2.3 mm usable, 1.1 mm part, 0.1 mm apart: 1 instead of 2).
 *
 * @throws RangeError for lengths that are not whole micrometres, or a part without length
 */
export function countAlong(usableUm: number, partUm: number, spacingUm: number): number {
  for (const [name, value] of Object.entries({ usableUm, partUm, spacingUm })) {
    if (!Number.isSafeInteger(value))
      throw new RangeError(`${name} must be a whole number of micrometres; found ${value}`)
  }
  if (partUm <= 0 || spacingUm < 0) {
    throw new RangeError(
      `a part must have a length and the spacing must not be negative; found ${partUm}, ${spacingUm}`,
    )
  }
  return Math.max(0, Math.floor((usableUm + spacingUm) / (partUm + spacingUm)))
}

/** All parts one way: columns and rows. */
export function countGrid(task: RectangleTask, turned: boolean): { columns: number; rows: number; count: number } {
  const [acrossUm, upUm] = turned ? [task.partHeightUm, task.partWidthUm] : [task.partWidthUm, task.partHeightUm]
  const columns = countAlong(task.usableWidthUm, acrossUm, task.spacingUm)
  const rows = countAlong(task.usableHeightUm, upUm, task.spacingUm)
  return { columns, rows, count: columns * rows }
}

export function countBlocks(blocks: readonly GridBlock[]): number {
  return blocks.reduce((sum, { columns, rows }) => sum + columns * rows, 0)
}

/** One block, all parts one way. */
export function packOneWay(task: RectangleTask, turned: boolean): GridBlock[] {
  const { columns, rows, count } = countGrid(task, turned)
  return count === 0 ? [] : [{ xUm: 0, yUm: 0, columns, rows, turned }]
}

/** Beyond this many ways to fill an edge, those that leave most of it unused are left out. */
const MAX_EDGE_FILLS = 24

/** How many parts lie upright and how many across along an edge; as many across as the upright ones leave room for. */
interface EdgeFill {
  readonly upright: number
  readonly across: number
}

/**
 * Rectangles in both orientations: four blocks in the corners, alternately upright and across, and a fifth in the hole
 * that they leave (five-block heuristic of Bischoff and Dowsland 1982, from memory). It holds every split into two blocks,
 * and the pinwheel that no straight cut can part. The spacing is folded in: parts and usable sides are taken s larger.
 * Never fewer than the better of the two plain grids.
 */
export function packBothWays(task: RectangleTask): GridBlock[] {
  const s = task.spacingUm
  const width = task.usableWidthUm + s
  const height = task.usableHeightUm + s
  const a = task.partWidthUm + s
  const b = task.partHeightUm + s
  let best = [packOneWay(task, false), packOneWay(task, true)].reduce((one, other) =>
    countBlocks(other) > countBlocks(one) ? other : one,
  )
  let bestCount = countBlocks(best)
  if (bestCount === 0) return best
  const areaBound = Math.floor((width * height) / (a * b))
  const alongX = listEdgeFills(width, a, b)
  const alongY = listEdgeFills(height, b, a)
  for (const bottom of alongX) {
    for (const left of alongY) {
      const one = bottom.upright * left.upright
      for (const top of alongX) {
        const four = top.across * left.across
        for (const right of alongY) {
          // Upright at the lower left and upper right, across at the lower right and upper left.
          if ((bottom.upright + top.upright) * a > width && (left.upright + right.upright) * b > height) continue
          if ((bottom.across + top.across) * b > width && (right.across + left.across) * a > height) continue
          const corners = one + four + bottom.across * right.across + top.upright * right.upright
          const hole = fillHole(width, height, a, b, bottom, top, left, right)
          if (corners + (hole === null ? 0 : hole.columns * hole.rows) <= bestCount) continue
          best = [
            { xUm: 0, yUm: 0, columns: bottom.upright, rows: left.upright, turned: false },
            { xUm: width - bottom.across * b, yUm: 0, columns: bottom.across, rows: right.across, turned: true },
            {
              xUm: width - top.upright * a,
              yUm: height - right.upright * b,
              columns: top.upright,
              rows: right.upright,
              turned: false,
            },
            { xUm: 0, yUm: height - left.across * a, columns: top.across, rows: left.across, turned: true },
            ...(hole === null ? [] : [hole]),
          ].filter(({ columns, rows }) => columns * rows > 0)
          bestCount = countBlocks(best)
          if (bestCount >= areaBound) return best
        }
      }
    }
  }
  return best
}

function listEdgeFills(length: number, uprightUm: number, acrossUm: number): EdgeFill[] {
  const fills: (EdgeFill & { unused: number })[] = []
  for (let upright = 0; upright * uprightUm <= length; upright += 1) {
    const across = Math.floor((length - upright * uprightUm) / acrossUm)
    fills.push({ upright, across, unused: length - upright * uprightUm - across * acrossUm })
  }
  if (fills.length <= MAX_EDGE_FILLS) return fills
  return fills.sort((one, other) => one.unused - other.unused || one.upright - other.upright).slice(0, MAX_EDGE_FILLS)
}

function fillHole(
  width: number,
  height: number,
  a: number,
  b: number,
  bottom: EdgeFill,
  top: EdgeFill,
  left: EdgeFill,
  right: EdgeFill,
): GridBlock | null {
  // The hole lies between the blocks in one of the two turning senses of a pinwheel.
  const holes = [
    [top.across * b, left.upright * b, width - bottom.across * b, height - right.upright * b],
    [bottom.upright * a, right.across * a, width - top.upright * a, height - left.across * a],
  ] as const
  let best: GridBlock | null = null
  for (const [x0, y0, x1, y1] of holes) {
    if (x1 <= x0 || y1 <= y0) continue
    for (const turned of [false, true]) {
      const columns = Math.floor((x1 - x0) / (turned ? b : a))
      const rows = Math.floor((y1 - y0) / (turned ? a : b))
      if (columns * rows > (best === null ? 0 : best.columns * best.rows)) {
        best = { xUm: x0, yUm: y0, columns, rows, turned }
      }
    }
  }
  return best
}
