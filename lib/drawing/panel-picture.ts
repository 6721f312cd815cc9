import type { LengthUnit } from '@/lib/engine'
import {
  countOf,
  digitsAsComputed,
  digitsOfEnteredLength,
  digitsOfLength,
  formatEnteredLength,
  getShownUnit,
  withUnitInHead,
} from '@/lib/engine/units'
import type { NestedPart, Nesting, PanelFormat } from '@/lib/fabrication'
import { drawGrainArrow } from './outline-picture'
import type { Palette } from './palette'
import { listPlaced } from './panel-files'
import { type DrawingNode, makeNode, type Picture, roundPx } from './picture'

export interface PanelPictureOptions {
  readonly palette: Palette
  readonly widthPx: number
  /** Margins and spacing that registration adds to the format's own. */
  readonly extraMarginMm?: number
  /** Of the sizes in words and in the table. */
  readonly unit?: LengthUnit
}

const PADDING_PX = 10
const FOOT_PX = 26
const MAX_HEIGHT_PX = 520
/** More placements than this make a table that nobody reads: it then gives the first ones. */
const MAX_ROWS = 400

/** A panel to scale with its parts, its margins and the direction of its foil; every placement stands in the table. */
export function drawPanel(
  part: Pick<NestedPart, 'outline' | 'array'>,
  nesting: Nesting,
  format: PanelFormat,
  options: PanelPictureOptions,
): Picture {
  const { palette, widthPx, extraMarginMm = 0, unit: chosen = 'mm' } = options
  const unit = getShownUnit('mm', chosen)
  const scale = Math.min((widthPx - 2 * PADDING_PX) / format.widthMm, MAX_HEIGHT_PX / format.heightMm)
  const [panelWidth, panelHeight] = [format.widthMm * scale, format.heightMm * scale]
  const toX = (xMm: number) => PADDING_PX + xMm * scale
  const toY = (yMm: number) => PADDING_PX + (format.heightMm - yMm) * scale
  const margins = {
    left: format.marginLeftMm + extraMarginMm,
    right: format.marginRightMm + extraMarginMm,
    top: format.marginTopMm + extraMarginMm,
    bottom: format.marginBottomMm + extraMarginMm,
  }
  const usable = {
    widthMm: Math.max(0, format.widthMm - margins.left - margins.right),
    heightMm: Math.max(0, format.heightMm - margins.top - margins.bottom),
  }
  const nodes: DrawingNode[] = [
    makeNode('rect', {
      x: PADDING_PX,
      y: PADDING_PX,
      width: panelWidth,
      height: panelHeight,
      fill: palette.allowed,
      stroke: palette.ink,
      'stroke-width': 1.2,
    }),
    makeNode('rect', {
      x: toX(margins.left),
      y: toY(format.heightMm - margins.top),
      width: usable.widthMm * scale,
      height: usable.heightMm * scale,
      fill: palette.paper,
      stroke: palette.inkSoft,
      'stroke-width': 0.8,
      'stroke-dasharray': '4 3',
    }),
    ...nesting.placements.flatMap((placement) =>
      listPlaced(part, placement).map(({ polygon, isFrame }) =>
        makeNode('polygon', {
          points: polygon.map(([x, y]) => `${roundPx(toX(x / 1000))},${roundPx(toY(y / 1000))}`).join(' '),
          // Turned parts are told apart by a shade and by the line, which a grey copy keeps.
          fill: isFrame ? palette.paper : placement.rotationDeg % 180 === 0 ? palette.film : palette.prepreg,
          stroke: palette.ink,
          'stroke-width': 0.7,
          'stroke-dasharray': placement.rotationDeg >= 180 ? '3 1.5' : null,
        }),
      ),
    ),
  ]
  if (format.foilRollingDirection !== null) {
    nodes.push(
      ...drawGrainArrow(
        PADDING_PX + 6,
        PADDING_PX + panelHeight + FOOT_PX / 2 + (format.foilRollingDirection === 'along-height' ? 40 : 4),
        format.foilRollingDirection === 'along-width',
        palette,
      ),
    )
  }
  const isArray = part.array !== undefined
  const isUpright = format.foilRollingDirection === 'along-height'
  const usedPct = digitsAsComputed(100 * nesting.utilisationFraction, 'sharePct')
  return {
    title: `${format.name}, ${digitsOfEnteredLength(format.widthMm, 'mm', unit)} × ${formatEnteredLength(format.heightMm, 'mm', unit)}`,
    description: `${nesting.count} parts${isArray ? ` in ${countOf(nesting.placements.length, 'array')}` : ''}, ${usedPct} % of the panel; the dashed line bounds what is usable, parts with a dashed edge are turned by 180° or 270°.`,
    widthPx,
    heightPx:
      panelHeight + 2 * PADDING_PX + (format.foilRollingDirection === null ? 0 : FOOT_PX + (isUpright ? 34 : 0)),
    nodes,
    table: {
      caption: describeRows(nesting.placements.length, isArray),
      columns: [
        { key: 'part', label: isArray ? 'Array' : 'Part', numeric: true },
        { key: 'x', label: withUnitInHead('x', unit), numeric: true },
        { key: 'y', label: withUnitInHead('y', unit), numeric: true },
        { key: 'turn', label: 'Turn, °', numeric: true },
      ],
      rows: nesting.placements.slice(0, MAX_ROWS).map(({ xUm, yUm, rotationDeg }, index) => ({
        part: String(index + 1),
        x: digitsOfLength(xUm, unit, 'plan'),
        y: digitsOfLength(yUm, unit, 'plan'),
        turn: String(rotationDeg),
      })),
    },
  }
}

function describeRows(count: number, isArray: boolean): string {
  const what = `Lower left corner of each ${isArray ? 'array’s frame' : 'part’s bounds'}, from the panel’s lower left corner`
  return count > MAX_ROWS ? `${what}; the first ${MAX_ROWS} of ${count}` : what
}
