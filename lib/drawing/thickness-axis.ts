import type { LengthUnit } from '@/lib/engine'
import { digitsOfTick, getUnitSymbol, lengthFromUm, umFromLength } from '@/lib/engine/units'
import type { Palette } from './palette'
import { type DrawingNode, makeNode } from './picture'

/** Round steps of a scale: 1, 2 or 5 times a power of ten, so that about `wantedCount` ticks span the length. */
export function chooseScaleStep(span: number, wantedCount: number): number {
  if (!(span > 0)) return 1
  const raw = span / Math.max(1, wantedCount)
  const power = 10 ** Math.floor(Math.log10(raw))
  const factor = raw / power
  if (factor <= 1) return power
  if (factor <= 2) return 2 * power
  if (factor <= 5) return 5 * power
  return 10 * power
}

/** Number of a length without its unit, for axis ticks whose unit stands at the axis. */
export function formatTick(value: number, step: number): string {
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
  return digitsOfTick(value, decimals)
}

/**
 * Depth axis left of a section: 0 at the top face, ticks in the chosen unit, growing downwards.
 *
 * @param topPx, heightPx  where the section lies; thicknessUm its whole thickness
 */
export function drawThicknessAxis(options: {
  readonly xPx: number
  readonly topPx: number
  readonly heightPx: number
  readonly thicknessUm: number
  readonly unit: LengthUnit
  readonly palette: Palette
  readonly fontSizePx: number
}): DrawingNode[] {
  const { xPx, topPx, heightPx, thicknessUm, unit, palette, fontSizePx } = options
  const span = lengthFromUm(thicknessUm, unit)
  const step = chooseScaleStep(span, Math.max(2, heightPx / 44))
  const nodes: DrawingNode[] = [
    makeNode('line', {
      x1: xPx,
      y1: topPx,
      x2: xPx,
      y2: topPx + heightPx,
      stroke: palette.inkSoft,
      'stroke-width': 0.75,
    }),
  ]
  for (let index = 0; index * step <= span * (1 + 1e-9); index += 1) {
    const y = topPx + (umFromLength(index * step, unit) / thicknessUm) * heightPx
    nodes.push(
      makeNode('line', { x1: xPx - 4, y1: y, x2: xPx, y2: y, stroke: palette.inkSoft, 'stroke-width': 0.75 }),
      makeText(formatTick(index * step, step), {
        x: xPx - 7,
        y: y + fontSizePx * 0.35,
        fill: palette.inkSoft,
        anchor: 'end',
        fontSizePx,
        palette,
      }),
    )
  }
  nodes.push(
    makeText(`depth, ${getUnitSymbol(unit)}`, {
      x: xPx,
      y: topPx - fontSizePx * 0.9,
      fill: palette.inkSoft,
      anchor: 'middle',
      fontSizePx,
      palette,
    }),
  )
  return nodes
}

export function makeText(
  text: string,
  options: {
    readonly x: number
    readonly y: number
    readonly palette: Palette
    readonly fontSizePx: number
    readonly fill?: string
    readonly anchor?: 'start' | 'middle' | 'end'
    readonly bold?: boolean
    readonly italic?: boolean
  },
): DrawingNode {
  return makeNode(
    'text',
    {
      x: options.x,
      y: options.y,
      fill: options.fill ?? options.palette.ink,
      'font-family': options.palette.fontFamily,
      'font-size': options.fontSizePx,
      'text-anchor': options.anchor ?? 'start',
      'font-weight': options.bold === true ? 'bold' : undefined,
      'font-style': options.italic === true ? 'italic' : undefined,
    },
    [text],
  )
}
