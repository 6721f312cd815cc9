import type { Point } from './frame'

/** The pieces of a line through points that lie within a circle. */
export function clipPolyline(points: readonly Point[], centre: Point, radius: number): Point[][] {
  const pieces: Point[][] = []
  let piece: Point[] = []
  const close = () => {
    if (piece.length > 1) pieces.push(piece)
    piece = []
  }
  points.slice(1).forEach((to, index) => {
    const from = points[index] ?? to
    const span = spanWithin(from, to, centre, radius)
    if (span === null) {
      close()
      return
    }
    const [low, high] = span
    if (low > 0) close()
    if (piece.length === 0) piece.push(along(from, to, low))
    piece.push(along(from, to, high))
    if (high < 1) close()
  })
  close()
  return pieces
}

/** A polygon within a circle, taken as one of many sides inside of it (Sutherland and Hodgman 1974): for fills, as pieces hang together along the rim. */
export function clipPolygon(corners: readonly Point[], centre: Point, radius: number): Point[] {
  let kept: readonly Point[] = corners
  for (let side = 0; side < SIDES; side += 1) {
    const turn = (2 * Math.PI * (side + 0.5)) / SIDES
    const [nx, ny] = [Math.cos(turn), Math.sin(turn)]
    const reach = radius * Math.cos(Math.PI / SIDES)
    const inside = ([x, y]: Point) => reach - ((x - centre[0]) * nx + (y - centre[1]) * ny)
    const next: Point[] = []
    kept.forEach((to, index) => {
      const from = kept.at(index - 1) ?? to
      const [a, b] = [inside(from), inside(to)]
      if (a >= 0 !== b >= 0) next.push(along(from, to, a / (a - b)))
      if (b >= 0) next.push(to)
    })
    kept = next
  }
  return [...kept]
}

const SIDES = 48

const along = (from: Point, to: Point, share: number): Point => [
  from[0] + share * (to[0] - from[0]),
  from[1] + share * (to[1] - from[1]),
]

/** Shares of a straight way between which it lies within the circle. */
function spanWithin(from: Point, to: Point, centre: Point, radius: number): readonly [number, number] | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const [ex, ey] = [from[0] - centre[0], from[1] - centre[1]]
  const a = dx * dx + dy * dy
  if (a === 0) return ex * ex + ey * ey <= radius * radius ? [0, 1] : null
  const half = dx * ex + dy * ey
  const root = half * half - a * (ex * ex + ey * ey - radius * radius)
  if (root <= 0) return null
  const low = Math.max(0, (-half - Math.sqrt(root)) / a)
  const high = Math.min(1, (-half + Math.sqrt(root)) / a)
  return low < high ? [low, high] : null
}
