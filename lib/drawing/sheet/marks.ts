import type { Palette } from '../palette'
import { type DrawingNode, makeNode } from '../picture'
import { LINE_HEIGHT_EM } from '../text-metrics'

/** Type sizes in mm: capitals of 1.8, 2.5 and 3.5 mm after ISO 3098-1 (from memory), at 0.66 of the type size. */
export const FONT_MM = { body: 2.73, title: 3.79, large: 5.3 } as const

export interface TextStyleMm {
  readonly fontMm: number
  readonly isBold?: boolean
  readonly isSoft?: boolean
  readonly anchor?: 'start' | 'middle' | 'end'
}

export function makeSheetText(
  text: string,
  x: number,
  y: number,
  { fontMm, isBold, isSoft, anchor }: TextStyleMm,
  palette: Palette,
): DrawingNode {
  return makeNode(
    'text',
    {
      x,
      y,
      'font-size': fontMm,
      'font-weight': isBold === true ? 'bold' : undefined,
      'text-anchor': anchor === 'start' ? undefined : anchor,
      fill: isSoft === true ? palette.inkSoft : palette.ink,
    },
    [text],
  )
}

/** Lines of text from `top` down; the first baseline lies one type size below it. */
export function makeLines(
  lines: readonly string[],
  x: number,
  top: number,
  style: TextStyleMm,
  palette: Palette,
): DrawingNode[] {
  const step = style.fontMm * LINE_HEIGHT_EM
  return lines.map((line, index) => makeSheetText(line, x, top + style.fontMm + index * step, style, palette))
}

export function getLinesHeightMm(lineCount: number, fontMm: number): number {
  return lineCount * fontMm * LINE_HEIGHT_EM
}

export function makeLine(
  from: readonly [x: number, y: number],
  to: readonly [x: number, y: number],
  widthMm: number,
  stroke: string,
): DrawingNode {
  return makeNode('line', { x1: from[0], y1: from[1], x2: to[0], y2: to[1], stroke, 'stroke-width': widthMm })
}
