import type { PlacedLabel } from './label-places'
import type { Palette } from './palette'
import { type DrawingNode, makeNode } from './picture'

/** Labels where they were placed, with a hairline to the point of each that stands off. */
export function drawPlacedLabels(placed: readonly PlacedLabel[], palette: Palette, fontSizePx: number): DrawingNode[] {
  const leaders = placed
    .filter(({ hasLeader }) => hasLeader)
    .map(({ request, x, y }) =>
      makeNode('line', {
        x1: request.x,
        y1: request.y,
        // To the near edge of the label, not through it.
        x2: x + Math.sign(request.x - x) * Math.min(Math.abs(request.x - x), fontSizePx * 0.5),
        y2: y + Math.sign(request.y - y) * Math.min(Math.abs(request.y - y), fontSizePx * 0.6),
        stroke: palette.hairline,
        'stroke-width': 0.75,
      }),
    )
  const texts = placed.map(({ request, x, y }) =>
    makeNode(
      'text',
      {
        x,
        y: y + fontSizePx * 0.35,
        'font-size': fontSizePx,
        'font-family': palette.fontFamily,
        'text-anchor': 'middle',
        fill: palette.ink,
      },
      [request.text],
    ),
  )
  return [...leaders, ...texts]
}
