import { measureText } from './text-metrics'

export interface LabelRequest {
  /** The point that the label names, px. */
  readonly x: number
  readonly y: number
  readonly text: string
  /** Where the label should rather stand, as signs: away from the body of a shape. */
  readonly towards?: { readonly dx: number; readonly dy: number }
}

export interface PlacedLabel {
  readonly request: LabelRequest
  /** Middle of the label. */
  readonly x: number
  readonly y: number
  /** It stands so far off that a line must lead to its point. */
  readonly hasLeader: boolean
}

export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

interface Frame {
  readonly fontSizePx: number
  readonly bounds: Box
  /** Half the width of what is drawn at a point: no label covers it. */
  readonly pointPx: number
  /** Places that are taken. */
  readonly reserved?: readonly Box[]
  /** Lines that a label must not lie across. */
  readonly lines?: readonly Line[]
}

export interface Line {
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

const DIRECTIONS = [
  { dx: 1, dy: -1 },
  { dx: 1, dy: 1 },
  { dx: -1, dy: -1 },
  { dx: -1, dy: 1 },
  { dx: 1, dy: 0 },
  { dx: -1, dy: 0 },
  { dx: 0, dy: -1 },
  { dx: 0, dy: 1 },
] as const

/** Steps away from the point; from the second on a line leads to it. */
const GAPS_PX = [1, 10, 20, 32, 46, 62, 80, 100, 125, 155, 190] as const

/**
 * Places labels beside their points so that none covers another, a point, or the edge. Each takes the nearest free place;
 * one that finds none is left out, for the table beside the picture to say.
 */
export function placeLabels(requests: readonly LabelRequest[], frame: Frame): PlacedLabel[] {
  const { fontSizePx, bounds, pointPx } = frame
  const taken: Box[] = [...(frame.reserved ?? []), ...requests.map(({ x, y }) => around(x, y, pointPx, pointPx))]
  return requests.flatMap((request) => {
    const halfWidth = measureText(request.text, fontSizePx) / 2 + 1
    const halfHeight = fontSizePx / 2 + 1
    for (const gap of GAPS_PX) {
      for (const { dx, dy } of orderDirections(request.towards)) {
        const reach = pointPx + gap
        const x = request.x + dx * (halfWidth + (dy === 0 ? reach : reach * 0.7))
        const y = request.y + dy * (halfHeight + (dx === 0 ? reach : reach * 0.7))
        const box = around(x, y, halfWidth, halfHeight)
        if (!isInside(box, bounds) || taken.some((other) => doOverlap(box, other))) continue
        if (frame.lines?.some((line) => doesCross(line, box))) continue
        taken.push(box)
        return [{ request, x, y, hasLeader: gap !== GAPS_PX[0] }]
      }
    }
    return []
  })
}

function orderDirections(towards: LabelRequest['towards']) {
  if (towards === undefined) return DIRECTIONS
  const score = ({ dx, dy }: (typeof DIRECTIONS)[number]) => dx * towards.dx + dy * towards.dy
  return [...DIRECTIONS].sort((a, b) => score(b) - score(a))
}

function around(x: number, y: number, halfWidth: number, halfHeight: number): Box {
  return { left: x - halfWidth, right: x + halfWidth, top: y - halfHeight, bottom: y + halfHeight }
}

function isInside(box: Box, bounds: Box): boolean {
  return box.left >= bounds.left && box.right <= bounds.right && box.top >= bounds.top && box.bottom <= bounds.bottom
}

function doOverlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

/** Does any of the line lie inside the box? Clips the line at each side in turn (parametric, Liang and Barsky 1984). */
function doesCross({ x1, y1, x2, y2 }: Line, { left, top, right, bottom }: Box): boolean {
  const [dx, dy] = [x2 - x1, y2 - y1]
  let [from, to] = [0, 1]
  for (const [step, room] of [
    [-dx, x1 - left],
    [dx, right - x1],
    [-dy, y1 - top],
    [dy, bottom - y1],
  ] as const) {
    if (step === 0) {
      if (room <= 0) return false
      continue
    }
    const at = room / step
    if (step < 0) from = Math.max(from, at)
    else to = Math.min(to, at)
    if (from >= to) return false
  }
  return true
}
