import { type DrawingNode, makeNode, roundPx } from './picture'

export type HatchPattern =
  | 'none'
  | 'rising'
  | 'falling'
  | 'dots'
  | 'dashes'
  | 'crossed'
  | 'grid'
  | 'upright'
  | 'paired'
  | 'zigzag'

export interface RectPx {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const SPACING_PX = 7

/**
 * Hatching of a rectangle as explicit strokes clipped to it. SVG patterns would be shorter, but their ids clash when
 * several drawings share a page, and PDF writers scale them badly.
 */
export function drawHatch(pattern: HatchPattern, rect: RectPx, stroke: string): DrawingNode[] {
  if (pattern === 'none' || rect.width <= 0 || rect.height <= 0) return []
  if (pattern === 'dots') return [drawDots(rect, stroke)]
  const path = getHatchPath(pattern, rect)
  return path === '' ? [] : [makeNode('path', { d: path, stroke, 'stroke-width': 0.6, fill: 'none' })]
}

function getHatchPath(pattern: Exclude<HatchPattern, 'none' | 'dots'>, rect: RectPx): string {
  switch (pattern) {
    case 'rising':
      return getSlanted(rect, SPACING_PX, -1)
    case 'falling':
      return getSlanted(rect, SPACING_PX, 1)
    case 'crossed':
      return getSlanted(rect, SPACING_PX * 1.3, 1) + getSlanted(rect, SPACING_PX * 1.3, -1)
    case 'paired':
      return getSlanted(rect, SPACING_PX * 2, -1) + getSlanted(rect, SPACING_PX * 2, -1, 3)
    case 'upright':
      return getUpright(rect, SPACING_PX * 0.7)
    case 'grid':
      return getUpright(rect, SPACING_PX * 1.6) + getLevel(rect, SPACING_PX * 1.2)
    case 'dashes':
      return getDashes(rect)
    case 'zigzag':
      return getZigzag(rect)
  }
}

/** Lines at 45 degrees; direction 1 falls to the right, -1 rises. */
function getSlanted(rect: RectPx, spacing: number, direction: 1 | -1, offset = 0): string {
  const { x, y, width, height } = rect
  let path = ''
  for (let start = -height + offset; start < width; start += spacing) {
    const from = Math.max(start, 0)
    const to = Math.min(start + height, width)
    if (to <= from) continue
    const dyFrom = from - start
    const dyTo = to - start
    const yFrom = direction === 1 ? y + dyFrom : y + height - dyFrom
    const yTo = direction === 1 ? y + dyTo : y + height - dyTo
    path += line(x + from, yFrom, x + to, yTo)
  }
  return path
}

function getUpright({ x, y, width, height }: RectPx, spacing: number): string {
  let path = ''
  for (let at = spacing / 2; at < width; at += spacing) path += line(x + at, y, x + at, y + height)
  return path
}

function getLevel({ x, y, width, height }: RectPx, spacing: number): string {
  let path = ''
  for (let at = spacing / 2; at < height; at += spacing) path += line(x, y + at, x + width, y + at)
  return path
}

function getDashes({ x, y, width, height }: RectPx): string {
  const rows = Math.max(1, Math.round(height / SPACING_PX))
  let path = ''
  for (let row = 0; row < rows; row += 1) {
    const at = y + ((row + 0.5) * height) / rows
    for (let from = row % 2 === 0 ? 2 : 8; from + 6 <= width; from += 12) path += line(x + from, at, x + from + 6, at)
  }
  return path
}

function getZigzag({ x, y, width, height }: RectPx): string {
  const step = 5
  let path = `M${roundPx(x)},${roundPx(y + height)}`
  for (let index = 1; index * step <= width; index += 1) {
    path += `L${roundPx(x + index * step)},${roundPx(index % 2 === 0 ? y + height : y)}`
  }
  return path
}

function drawDots({ x, y, width, height }: RectPx, fill: string): DrawingNode {
  const rows = Math.max(1, Math.round(height / 6))
  const radius = Math.min(0.8, height / 3)
  let path = ''
  for (let row = 0; row < rows; row += 1) {
    const cy = y + ((row + 0.5) * height) / rows
    for (let cx = x + (row % 2 === 0 ? 4 : 8); cx + radius < x + width; cx += 8) {
      path += `M${roundPx(cx - radius)},${roundPx(cy)}a${roundPx(radius)},${roundPx(radius)} 0 1 0 ${roundPx(2 * radius)},0a${roundPx(radius)},${roundPx(radius)} 0 1 0 ${roundPx(-2 * radius)},0`
    }
  }
  return makeNode('path', { d: path, fill, stroke: 'none' })
}

function line(x1: number, y1: number, x2: number, y2: number): string {
  return `M${roundPx(x1)},${roundPx(y1)}L${roundPx(x2)},${roundPx(y2)}`
}
