import type { LengthUnit, Outline } from '@/lib/engine'
import { tidy } from '@/lib/engine/numerics'
import { digitsOfEnteredLength, getShownUnit, withUnit, withUnitInHead } from '@/lib/engine/units'
import { type LabelRequest, placeLabels } from './label-places'
import type { Palette } from './palette'
import { type DrawingNode, makeNode, type Picture, roundPx } from './picture'
import { drawPlacedLabels } from './placed-labels'

const PADDING_PX = 26
const FONT_PX = 11
/** More corners than these are told by the table alone. */
const MAX_NUMBERED = 24

/** Length of a grain arrow, and how wide its head opens. */
const ARROW_PX = 46
const ARROW_HEAD_PX = 5

/** The outline in the flat, to scale, with its corners numbered as long as they can be read and the foil's direction. */
export function drawOutline(
  outline: Outline,
  { palette, widthPx, unit: chosen = 'mm' }: { palette: Palette; widthPx: number; unit?: LengthUnit },
): Picture {
  const unit = getShownUnit('mm', chosen)
  const { verticesMm } = outline
  const rollingDirection = outline.rollingDirection === 'either' ? null : outline.rollingDirection
  const xs = verticesMm.map(([x]) => x)
  const ys = verticesMm.map(([, y]) => y)
  const [minX, minY] = [Math.min(...xs), Math.min(...ys)]
  const [spanX, spanY] = [Math.max(...xs) - minX, Math.max(...ys) - minY]
  const scale = Math.min((widthPx - 2 * PADDING_PX) / Math.max(spanX, 1e-9), 260 / Math.max(spanY, 1e-9))
  const heightPx = spanY * scale + 2 * PADDING_PX + (rollingDirection === null ? 0 : 20)
  const toX = (x: number) => PADDING_PX + (x - minX) * scale
  const toY = (y: number) => PADDING_PX + (spanY - (y - minY)) * scale
  const points = verticesMm.map(([x, y]) => `${roundPx(toX(x))},${roundPx(toY(y))}`).join(' ')
  const nodes: DrawingNode[] = [
    makeNode('polygon', { points, fill: palette.film, stroke: palette.ink, 'stroke-width': 1.2 }),
  ]
  if (verticesMm.length <= MAX_NUMBERED) {
    nodes.push(
      ...verticesMm.map(([x, y]) => makeNode('circle', { cx: toX(x), cy: toY(y), r: 2, fill: palette.ink })),
      ...drawCornerNumbers(
        verticesMm.map(([x, y]) => ({
          x: toX(x),
          y: toY(y),
          towards: { dx: Math.sign(x - minX - spanX / 2), dy: -Math.sign(y - minY - spanY / 2) },
        })),
        { widthPx, heightPx: spanY * scale + 2 * PADDING_PX },
        palette,
      ),
    )
  }
  if (rollingDirection !== null) {
    nodes.push(...drawGrainArrow(PADDING_PX + 8, heightPx - 12, rollingDirection === 'along-x', palette))
  }
  const digits = (valueMm: number) => digitsOfEnteredLength(tidy(valueMm), 'mm', unit)
  const size = `${digits(spanX)} × ${withUnit(digits(spanY), unit)}`
  return {
    title: 'Outline in the flat',
    description: `${verticesMm.length} corners, ${size}${
      rollingDirection === null ? '' : `; the foil’s rolling direction lies along ${rollingDirection.slice(-1)}`
    }.`,
    widthPx,
    heightPx,
    nodes,
    table: {
      caption: 'Corners of the outline',
      columns: [
        { key: 'corner', label: 'Corner', numeric: true },
        { key: 'x', label: withUnitInHead('x', unit), numeric: true },
        { key: 'y', label: withUnitInHead('y', unit), numeric: true },
      ],
      rows: verticesMm.map(([x, y], index) => ({ corner: String(index + 1), x: digits(x), y: digits(y) })),
    },
  }
}

/** Numbers beside their corners, none over another: where corners crowd, a line leads from a number to its corner. */
function drawCornerNumbers(
  corners: readonly Omit<LabelRequest, 'text'>[],
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
  palette: Palette,
): DrawingNode[] {
  const requests = corners.map((corner, index) => ({ ...corner, text: String(index + 1) }))
  const bounds = { left: 0, top: 0, right: widthPx, bottom: heightPx }
  const lines = corners.map(({ x, y }, index) => {
    const next = corners[(index + 1) % corners.length] ?? { x, y }
    return { x1: x, y1: y, x2: next.x, y2: next.y }
  })
  return drawPlacedLabels(placeLabels(requests, { fontSizePx: FONT_PX, bounds, pointPx: 3, lines }), palette, FONT_PX)
}

/** A double arrow that says along which way the foil was rolled, with its word. */
export function drawGrainArrow(xPx: number, yPx: number, isAcross: boolean, palette: Palette): DrawingNode[] {
  const [dx, dy] = isAcross ? [ARROW_PX, 0] : [0, -ARROW_PX]
  const [headX, headY] = isAcross ? [ARROW_HEAD_PX, ARROW_HEAD_PX] : [ARROW_HEAD_PX, -ARROW_HEAD_PX]
  const stroke = { stroke: palette.strain, 'stroke-width': 1.2, fill: 'none' }
  const head = (x: number, y: number, towards: 1 | -1) =>
    makeNode('path', {
      d: isAcross
        ? `M${x + towards * headX},${y - headY} L${x},${y} L${x + towards * headX},${y + headY}`
        : `M${x - headX},${y + towards * headY} L${x},${y} L${x + headX},${y + towards * headY}`,
      ...stroke,
    })
  return [
    makeNode('line', { x1: xPx, y1: yPx, x2: xPx + dx, y2: yPx + dy, ...stroke }),
    head(xPx, yPx, 1),
    head(xPx + dx, yPx + dy, -1),
    makeNode(
      'text',
      {
        x: xPx + (isAcross ? ARROW_PX + 8 : 10),
        y: yPx + 4,
        'font-size': FONT_PX,
        'font-family': palette.fontFamily,
        fill: palette.strain,
      },
      ['foil rolled this way'],
    ),
  ]
}
