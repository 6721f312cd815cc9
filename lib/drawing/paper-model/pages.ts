import type { Point } from '../plan/frame'

/** Sheets that desk printers take, in mm: ISO 216 and the North American letter. */
export const PAPERS = { a4: [210, 297], letter: [215.9, 279.4] } as const

export type Paper = keyof typeof PAPERS

/** What desk printers leave blank, and room below for the scale, the legend and the name. Our choices. */
const MARGIN_MM = 10
export const FOOT_MM = 32
/** Sheets repeat this much of each other, to be laid over each other and glued. */
export const OVERLAP_MM = 10

export interface Rect {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** One sheet of paper and the part of the plan on it, both in mm. */
export interface Page {
  readonly column: number
  readonly row: number
  readonly paper: Point
  /** On the paper, from its upper left corner. */
  readonly window: Rect
  /** Of the plan, at the window's upper left corner. */
  readonly upperLeftMm: Point
}

export interface Pages {
  readonly columns: number
  readonly rows: number
  readonly list: readonly Page[]
}

/** As few sheets as it takes, upright or across; of equally many, upright. Windows overlap, and their middles follow each other. */
export function listPages(paper: Paper, minMm: Point, maxMm: Point): Pages {
  const [short, long] = PAPERS[paper]
  const upright = tile([short, long], minMm, maxMm)
  const across = tile([long, short], minMm, maxMm)
  return across.list.length < upright.list.length ? across : upright
}

function tile(paper: Point, minMm: Point, maxMm: Point): Pages {
  const window: Rect = {
    x: MARGIN_MM,
    y: MARGIN_MM,
    width: paper[0] - 2 * MARGIN_MM,
    height: paper[1] - 2 * MARGIN_MM - FOOT_MM,
  }
  // Room beside the outline, so that it is nowhere cut on the very edge of what can be printed.
  const beside = 5
  const size: Point = [maxMm[0] - minMm[0] + 2 * beside, maxMm[1] - minMm[1] + 2 * beside]
  const count = (length: number, room: number) =>
    Math.max(1, Math.ceil((length - OVERLAP_MM - 1e-9) / (room - OVERLAP_MM)))
  const [columns, rows] = [count(size[0], window.width), count(size[1], window.height)]
  const list = Array.from({ length: columns * rows }, (_, index): Page => {
    const [column, row] = [index % columns, Math.floor(index / columns)]
    return {
      column: column + 1,
      row: row + 1,
      paper,
      window,
      upperLeftMm: [
        minMm[0] - beside + column * (window.width - OVERLAP_MM),
        maxMm[1] + beside - row * (window.height - OVERLAP_MM),
      ],
    }
  })
  return { columns, rows, list }
}
