import type { Palette } from '../palette'
import { type DrawingNode, makeNode, roundPx } from '../picture'
import type { SheetPlan } from './contents'
import { FONT_MM, makeLine, makeSheetText } from './marks'
import { chooseScale } from './scales'
import { type LaidBlock, makeTitle, type Strip } from './strips'

/** Room for the two overall dimensions, above and on the left. */
const DIMENSION_MM = 12
/** Higher than this a view would push everything else off its sheet. */
const HIGHEST_MM = 110
const EDGE_MM = 0.5
const FINE_MM = 0.25
const ARROW_MM = 2.5
/** More corners than these are too close together to be numbered; the table lists them all the same. */
const MOST_NUMBERED = 24

/** The outline to scale, with its overall dimensions and the direction in which the foil was rolled. */
export function layPlan(
  block: SheetPlan,
  widthMm: number,
  highestMm: number,
  formatPlan: (valueMm: number) => string,
  palette: Palette,
): LaidBlock {
  const xs = block.verticesMm.map(([x]) => x)
  const ys = block.verticesMm.map(([, y]) => y)
  const [left, top] = [Math.min(...xs), Math.max(...ys)]
  const extent = [Math.max(...xs) - left, top - Math.min(...ys)] as const
  const title = makeTitle(block.title, widthMm, palette)
  const room = [
    widthMm - 2 * DIMENSION_MM,
    Math.min(HIGHEST_MM, highestMm - title.heightMm) - 2 * DIMENSION_MM,
  ] as const
  const [scale, factor] = chooseScale(extent, room)
  const head = makeTitle(`${block.title}, scale ${scale}`, widthMm, palette)
  const size = [extent[0] * factor, extent[1] * factor] as const
  const strip: Strip = {
    heightMm: size[1] + 2 * DIMENSION_MM,
    draw: (x, y) => {
      const origin = [x + DIMENSION_MM, y + DIMENSION_MM] as const
      const points = block.verticesMm.map(
        ([px, py]) => [origin[0] + (px - left) * factor, origin[1] + (top - py) * factor] as const,
      )
      return [
        makeNode('path', {
          d: `M${points.map(([px, py]) => `${roundPx(px)},${roundPx(py)}`).join('L')}Z`,
          fill: palette.allowed,
          stroke: palette.ink,
          'stroke-width': EDGE_MM,
          'stroke-linejoin': 'round',
        }),
        ...drawDimensions(origin, size, [formatPlan(extent[0]), formatPlan(extent[1])], palette),
        ...(points.length <= MOST_NUMBERED ? points.map((point) => drawCornerDot(point, palette)) : []),
        ...drawRolling(block, origin, size, palette),
      ]
    },
  }
  return { id: block.id, title: block.title, widthMm, head, headContinued: head, strips: [strip], leastStrips: 1 }
}

function drawCornerDot([x, y]: readonly [number, number], palette: Palette): DrawingNode {
  return makeNode('circle', { cx: x, cy: y, r: 0.6, fill: palette.ink })
}

type Point = readonly [x: number, y: number]

function drawArrowHead([x, y]: Point, towards: Point, palette: Palette): DrawingNode {
  const [dx, dy] = towards
  const back = [x - dx * ARROW_MM, y - dy * ARROW_MM] as const
  const half = ARROW_MM / 5
  const corner = (side: 1 | -1) => `${roundPx(back[0] - dy * half * side)},${roundPx(back[1] + dx * half * side)}`
  return makeNode('path', { d: `M${roundPx(x)},${roundPx(y)}L${corner(1)}L${corner(-1)}Z`, fill: palette.ink })
}

/** Overall width above the outline and height on its left, with arrows at both ends. */
function drawDimensions(
  [x, y]: Point,
  [width, height]: Point,
  labels: readonly string[],
  palette: Palette,
): DrawingNode[] {
  const { ink } = palette
  const lineY = y - 5
  const lineX = x - 4
  const text = (label: string, at: Point, anchor: 'middle' | 'start') =>
    makeSheetText(label, at[0], at[1], { fontMm: FONT_MM.body, anchor }, palette)
  return [
    makeLine([x, y - 1], [x, lineY - 1.5], FINE_MM, ink),
    makeLine([x + width, y - 1], [x + width, lineY - 1.5], FINE_MM, ink),
    makeLine([x, lineY], [x + width, lineY], FINE_MM, ink),
    drawArrowHead([x, lineY], [-1, 0], palette),
    drawArrowHead([x + width, lineY], [1, 0], palette),
    text(labels[0] ?? '', [x + width / 2, lineY - 1], 'middle'),
    makeLine([x - 1, y], [lineX - 1.5, y], FINE_MM, ink),
    makeLine([x - 1, y + height], [lineX - 1.5, y + height], FINE_MM, ink),
    makeLine([lineX, y], [lineX, y + height], FINE_MM, ink),
    drawArrowHead([lineX, y], [0, -1], palette),
    drawArrowHead([lineX, y + height], [0, 1], palette),
    // Under the lower end: beside the line there is no room for long numbers, and turned text is read badly on screen.
    text(labels[1] ?? '', [lineX - 5, y + height + 3.5], 'start'),
  ]
}

function drawRolling(
  { rollingDirection }: SheetPlan,
  [x, y]: Point,
  [width, height]: Point,
  palette: Palette,
): DrawingNode[] {
  if (rollingDirection === null) return []
  const label = makeSheetText(
    `foil rolled ${rollingDirection.replace('-', ' ')}`,
    x + 20,
    y + height + 7.5,
    { fontMm: FONT_MM.body },
    palette,
  )
  const length = 14
  const from: Point = rollingDirection === 'along-x' ? [x + 3, y + height + 6.6] : [x + 10, y + height + 10]
  const to: Point =
    rollingDirection === 'along-x' ? [from[0] + length, from[1]] : [from[0], y + height + Math.min(2, width)]
  const towards: Point = rollingDirection === 'along-x' ? [1, 0] : [0, -1]
  return [makeLine(from, to, FINE_MM * 2, palette.ink), drawArrowHead(to, towards, palette), label]
}
