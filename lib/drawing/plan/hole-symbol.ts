import type { Palette } from '../palette'
import { type DrawingNode, makeNode, roundPx } from '../picture'
import type { Point } from './frame'

/** Least radius of a symbol, in mm of paper: below it one symbol looks like the next. Our choice. */
const LEAST_MM = 0.55
const LINE_MM = 0.18

/** Marks inside the circle, by the place of the hole in the design's list; further kinds begin again, and their name tells them apart. */
const MARKS = ['plus', 'none', 'filled', 'cross', 'half', 'square', 'ring', 'diamond'] as const

/** From a hole's middle to the farthest of its symbol. */
export const reachOfHoleSymbol = (kind: number, trueRadius: number, perMm: number): number =>
  Math.max(trueRadius, LEAST_MM * perMm) * (MARKS[Math.max(0, kind) % MARKS.length] === 'plus' ? CENTRE_LINES : 1)

/** Centre lines pass the circle by this share of its radius. */
const CENTRE_LINES = 1.4

/** A hole at its true size, or at the least that can be read, with the mark of its kind. */
export function drawHoleSymbol(
  kind: number,
  [x, y]: Point,
  trueRadius: number,
  { palette, perMm }: { readonly palette: Palette; readonly perMm: number },
): DrawingNode[] {
  const mark = MARKS[Math.max(0, kind) % MARKS.length]
  const r = Math.max(trueRadius, LEAST_MM * perMm)
  const look = { fill: 'none', stroke: palette.ink, 'stroke-width': LINE_MM * perMm }
  const circle = makeNode('circle', { cx: x, cy: y, r, ...look, fill: mark === 'filled' ? palette.ink : palette.paper })
  const path = (d: string, fill = 'none') => [circle, makeNode('path', { d, ...look, fill })]
  const at = (dx: number, dy: number) => `${roundPx(x + dx * r)},${roundPx(y + dy * r)}`
  const s = Math.SQRT1_2
  switch (mark) {
    case 'plus':
      return path(`M${at(-CENTRE_LINES, 0)}L${at(CENTRE_LINES, 0)}M${at(0, -CENTRE_LINES)}L${at(0, CENTRE_LINES)}`)
    case 'cross':
      return path(`M${at(-s, -s)}L${at(s, s)}M${at(-s, s)}L${at(s, -s)}`)
    case 'half':
      return path(`M${at(0, -1)}A${roundPx(r)},${roundPx(r)} 0 0 1 ${at(0, 1)}Z`, palette.ink)
    case 'square':
      return path(`M${at(-s, -s)}L${at(s, -s)}L${at(s, s)}L${at(-s, s)}Z`)
    case 'ring':
      return [circle, makeNode('circle', { cx: x, cy: y, r: r / 2, ...look })]
    case 'diamond':
      return path(`M${at(0, -1)}L${at(1, 0)}L${at(0, 1)}L${at(-1, 0)}Z`)
    default:
      return [circle]
  }
}

/** How a table describes the symbol. */
export const nameHoleSymbol = (kind: number): string => SYMBOL_WORDS[MARKS[Math.max(0, kind) % MARKS.length] ?? 'none']

const SYMBOL_WORDS: Readonly<Record<(typeof MARKS)[number], string>> = {
  plus: 'circle with centre lines',
  none: 'empty circle',
  filled: 'filled circle',
  cross: 'circle with slanting cross',
  half: 'half-filled circle',
  square: 'square in a circle',
  ring: 'two circles',
  diamond: 'diamond in a circle',
}
