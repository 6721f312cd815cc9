import { measureArray } from '@/lib/plan'
import type { Palette } from '../palette'
import { type DrawingNode, makeNode, roundPx } from '../picture'
import { makePlanFrame, type Point, pathOfNodes } from '../plan/frame'
import { wrapText } from '../text-metrics'
import type { SheetArray } from './contents'
import type { SheetWords } from './contents/words'
import { FONT_MM, getLinesHeightMm, makeLines } from './marks'
import { chooseScale } from './scales'
import { type LaidBlock, makeTitle, type Strip } from './strips'

const HIGHEST_MM = 120
const EDGE_MM = 0.35
const FRAME_MM = 0.5
/** Room for the lines, which are centred on the edges. */
const MARGIN_MM = 1
const TAB_MM = 0.7
const FIDUCIAL_MM = 0.9

/** Parts in their steps within the frame, with tabs and fiducials; what it measures stands below. */
export function layArray(
  block: SheetArray,
  widthMm: number,
  roomMm: number,
  words: SheetWords,
  palette: Palette,
): LaidBlock {
  const { plan, array } = block
  const layout = measureArray(plan)
  const [low, high]: readonly [Point, Point] =
    layout === null
      ? [
          [0, 0],
          [0, 0],
        ]
      : [layout.lowMm, layout.highMm]
  const extent: Point = [high[0] - low[0], high[1] - low[1]]
  const plain = makeTitle(block.title, widthMm, palette)
  const said = wrapText(describe(block, extent, words), widthMm, FONT_MM.body)
  const highest = Math.min(HIGHEST_MM, roomMm - plain.heightMm - getLinesHeightMm(said.length, FONT_MM.body))
  const [scale, factor] = chooseScale(extent, [widthMm - 2 * MARGIN_MM, highest - 2 * MARGIN_MM])
  const head = makeTitle(`${block.title}, scale ${scale}`, widthMm, palette)
  const draw = (x: number, y: number): DrawingNode[] => {
    const place = makePlanFrame([x + MARGIN_MM, y + MARGIN_MM], [low[0], high[1]], factor).toPicture
    const dot = (at: Point, radius: number, fill: string) => {
      const [cx, cy] = place(at)
      return makeNode('circle', { cx: roundPx(cx), cy: roundPx(cy), r: radius, fill })
    }
    const [left, top] = place([low[0], high[1]])
    return [
      ...(array.frameMm === null
        ? []
        : [
            makeNode('rect', {
              x: roundPx(left),
              y: roundPx(top),
              width: roundPx(extent[0] * factor),
              height: roundPx(extent[1] * factor),
              fill: 'none',
              stroke: palette.ink,
              'stroke-width': FRAME_MM,
            }),
          ]),
      ...(layout?.offsetsMm ?? []).flatMap(([dx, dy]) => {
        const moved = makePlanFrame([x + MARGIN_MM, y + MARGIN_MM], [low[0] - dx, high[1] - dy], factor)
        const shape = (nodes: NonNullable<typeof plan.outline>, fill: string) =>
          makeNode('path', {
            d: pathOfNodes(nodes, moved, true),
            fill,
            stroke: palette.ink,
            'stroke-width': EDGE_MM,
            'stroke-linejoin': 'round',
          })
        return [
          ...(plan.outline === null ? [] : [shape(plan.outline, palette.allowed)]),
          ...plan.cutOuts.map(({ nodes }) => shape(nodes, palette.paper)),
          ...array.tabs.map(({ atMm }) => dot([atMm[0] + dx, atMm[1] + dy], TAB_MM, palette.ink)),
        ]
      }),
      ...array.fiducials.map(({ atMm }) => dot(atMm, FIDUCIAL_MM, palette.inkSoft)),
    ]
  }
  const strips: Strip[] = [
    { heightMm: extent[1] * factor + 2 * MARGIN_MM, draw },
    ...said.map(
      (line): Strip => ({
        heightMm: getLinesHeightMm(1, FONT_MM.body),
        draw: (x, y) => makeLines([line], x, y, { fontMm: FONT_MM.body, isSoft: true }, palette),
      }),
    ),
  ]
  return { id: block.id, title: block.title, widthMm, head, headContinued: head, strips, leastStrips: strips.length }
}

function describe({ array }: SheetArray, extent: Point, words: SheetWords): string {
  const say = (mm: number) => `${words.plan(Math.round(mm * 1e6) / 1e6)} ${words.planUnit}`
  const steps = [
    ...(array.columns > 1 && array.columnStepMm !== null ? [`${say(array.columnStepMm)} along x`] : []),
    ...(array.rows > 1 && array.rowStepMm !== null ? [`${say(array.rowStepMm)} along y`] : []),
  ]
  return [
    `${array.columns} by ${array.rows} parts, all the same way up${steps.length === 0 ? '' : `, stepped ${steps.join(' and ')}`}.`,
    array.frameMm === null
      ? 'The width of the frame is not stated.'
      : `Frame ${say(array.frameMm)} wide, ${say(extent[0])} by ${say(extent[1])} over all.`,
    array.tabs.length === 0
      ? 'Tabs are not stated.'
      : `Black dots: tabs, ${array.tabs.map(({ widthMm }) => say(widthMm)).join(', ')} wide.`,
    array.fiducials.length === 0 ? 'Fiducials are not stated.' : 'Grey dots: fiducials.',
  ].join(' ')
}
