import { type DrawnLayer, UNIT_NM } from '@/lib/artwork-picture'
import { clipRing, type Frame, isAlongFrame, type Ring } from './clip-ring'

const UNITS_PER_MM = 1e6 / UNIT_NM
/** Corners nearer to each other than this are one: half of what the file keeps of a place. */
const LEAST_STEP_PX = 0.1
/** More corners than these in one crop are no longer told apart on paper, and would make the file large. Our choice. */
const MOST_CORNERS = 12_000

export type ToPx = (filesXMm: number, filesYMm: number) => readonly [number, number]

/** Borders of what a layer covers within the frame, in px; null where they are too many. */
export function ringsInFrame(layer: DrawnLayer, toPx: ToPx, frame: Frame): number[][] | null {
  const { corners, pathStarts } = layer
  const rings: number[][] = []
  let cornerCount = 0
  for (let path = 0; path + 1 < pathStarts.length; path += 1) {
    const [first = 0, end = 0] = [pathStarts[path], pathStarts[path + 1]]
    const ring: number[] = []
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
    for (let corner = first; corner < end; corner += 1) {
      const [x, y] = toPx((corners[2 * corner] ?? 0) / UNITS_PER_MM, (corners[2 * corner + 1] ?? 0) / UNITS_PER_MM)
      ring.push(x, y)
      minX = Math.min(minX, x)
      minY = Math.min(minY, y)
      maxX = Math.max(maxX, x)
      maxY = Math.max(maxY, y)
    }
    if (maxX < 0 || maxY < 0 || minX > frame.width || minY > frame.height) continue
    const kept = thinOut(clipRing(ring, frame))
    if (kept.length < 6) continue
    cornerCount += kept.length / 2
    if (cornerCount > MOST_CORNERS) return null
    rings.push(kept)
  }
  return rings
}

function thinOut(ring: Ring): number[] {
  const kept: number[] = []
  for (let at = 0; at < ring.length; at += 2) {
    const [x, y] = [ring[at] ?? 0, ring[at + 1] ?? 0]
    const [lastX = Infinity, lastY = Infinity] = kept.slice(-2)
    if (Math.hypot(x - lastX, y - lastY) >= LEAST_STEP_PX) kept.push(x, y)
  }
  return kept
}

const write = (px: number): string => String(Math.round(px * 100) / 100)

/** For filling by the even-odd rule. */
export const fillPath = (rings: readonly Ring[]): string =>
  rings
    .map((ring) => {
      let path = ''
      for (let at = 0; at < ring.length; at += 2)
        path += `${at === 0 ? 'M' : 'L'}${write(ring[at] ?? 0)} ${write(ring[at + 1] ?? 0)}`
      return `${path}Z`
    })
    .join('')

/** Borders as lines, without the edges along which the frame cut them. */
export function linePath(rings: readonly Ring[], frame: Frame): string {
  let path = ''
  for (const ring of rings) {
    let isDrawing = false
    for (let at = 0; at < ring.length; at += 2) {
      const next = (at + 2) % ring.length
      const edge = [ring[at] ?? 0, ring[at + 1] ?? 0, ring[next] ?? 0, ring[next + 1] ?? 0] as const
      if (isAlongFrame(edge, frame)) isDrawing = false
      else {
        path += `${isDrawing ? '' : `M${write(edge[0])} ${write(edge[1])}`}L${write(edge[2])} ${write(edge[3])}`
        isDrawing = true
      }
    }
  }
  return path
}
