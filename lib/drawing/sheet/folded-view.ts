import type { LengthUnit } from '@/lib/engine'
import { roundTo } from '@/lib/engine/numerics'
import { drawFolded, listFoldedLegend } from '../folded/folded-picture'
import { FOLDED_VIEWS, type FoldedViewName } from '../folded/folded-view'
import type { Palette } from '../palette'
import { makeNode, roundPx } from '../picture'
import { wrapText } from '../text-metrics'
import type { SheetFolded } from './contents'
import { FONT_MM, getLinesHeightMm, makeLines } from './marks'
import { type LaidBlock, makeTitle, type Strip } from './strips'

/** Edges of the picture are drawn 0.6 px wide: 0.15 mm on the sheet. */
const MM_PER_PX = 0.25
const HIGHEST_MM = 80
const GAP_MM = 6

/** The part folded by all its bends, seen obliquely and from the side, and below it the box that it fills. Not to scale. */
export function layFolded(
  block: SheetFolded,
  widthMm: number,
  roomMm: number,
  unit: LengthUnit,
  palette: Palette,
): LaidBlock {
  const title = `${block.title}, not to scale`
  const head = makeTitle(title, widthMm, palette)
  const halfMm = (widthMm - GAP_MM) / 2
  const views = (['oblique', 'front'] as const).map((view) => draw(block, view, halfMm, unit, palette))
  const tallest = Math.max(...views.map((picture) => (picture?.heightPx ?? 0) * MM_PER_PX))
  const said = wrapText(describe(block, views[0]?.description ?? ''), widthMm, FONT_MM.body)
  const foot = getLinesHeightMm(said.length, FONT_MM.body)
  const highest = Math.min(HIGHEST_MM, roomMm - head.heightMm - foot)
  const shrink = Math.min(1, highest / Math.max(tallest, 1e-6))
  const strips: Strip[] = [
    {
      heightMm: tallest * shrink,
      draw: (x, y) =>
        views.flatMap((picture, at) =>
          picture === null
            ? []
            : [
                makeNode(
                  'g',
                  {
                    transform: `translate(${roundPx(x + at * (halfMm + GAP_MM))} ${roundPx(y)}) scale(${roundTo(MM_PER_PX * shrink, 5)})`,
                  },
                  picture.nodes,
                ),
              ],
        ),
    },
    ...said.map(
      (line): Strip => ({
        heightMm: getLinesHeightMm(1, FONT_MM.body),
        draw: (x, y) => makeLines([line], x, y, { fontMm: FONT_MM.body, isSoft: true }, palette),
      }),
    ),
  ]
  return { id: block.id, title: block.title, widthMm, head, headContinued: head, strips, leastStrips: strips.length }
}

function draw(
  { bodies, steps, room }: SheetFolded,
  view: FoldedViewName,
  widthMm: number,
  unit: LengthUnit,
  palette: Palette,
) {
  return drawFolded(
    { bodies, steps, made: steps.length, room },
    { palette, widthPx: widthMm / MM_PER_PX, view: FOLDED_VIEWS[view], unit },
  )
}

function describe({ bodies, notes }: SheetFolded, description: string): string {
  const shown = listFoldedLegend(bodies).map(({ words }) => words)
  return [`Oblique and front view. ${description} Shown: ${shown.join(', ')}.`, ...notes].join(' ')
}
