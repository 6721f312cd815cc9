import type { Palette } from './palette'
import { type DrawingNode, makeNode, type Picture, toSvg } from './picture'

/** Side of the square in which the mark is drawn; the paths below are in these units. */
export const PRODUCT_MARK_SIZE = 24

/** The product's mark: a hairpin bend in section. A copper conductor lies between two films and turns back on itself. */
export const PRODUCT_MARK_PATHS = [
  { part: 'film', d: 'M2 3.5h11.5a8.5 8.5 0 0 1 0 17H2', width: 1.5 },
  { part: 'copper', d: 'M2 7.25h11.5a4.75 4.75 0 0 1 0 9.5H2', width: 3.25 },
  { part: 'film', d: 'M2 11h11.5a1 1 0 0 1 0 2H2', width: 1.5 },
] as const

/** The mark with its upper left corner at a place, as large as asked. */
export function drawProductMark(
  x: number,
  y: number,
  size: number,
  palette: Pick<Palette, 'copper' | 'ink'>,
): DrawingNode {
  return makeNode(
    'g',
    { transform: `translate(${x} ${y}) scale(${Math.round((1000 * size) / PRODUCT_MARK_SIZE) / 1000})` },
    PRODUCT_MARK_PATHS.map(({ part, d, width }) =>
      makeNode('path', {
        d,
        fill: 'none',
        stroke: part === 'copper' ? palette.copper : palette.ink,
        'stroke-width': width,
      }),
    ),
  )
}

/** The mark alone, as the text of an SVG. */
export function makeProductMarkSvg(sizePx: number, palette: Pick<Palette, 'copper' | 'ink'>): string {
  const picture: Picture = {
    title: 'Bendworthy',
    description: 'A hairpin bend in copper',
    widthPx: sizePx,
    heightPx: sizePx,
    nodes: [drawProductMark(0, 0, sizePx, palette)],
    table: { caption: 'Bendworthy', columns: [], rows: [] },
  }
  return toSvg(picture)
}
