import type { ZoneLayerResult } from '@/lib/engine'
import { drawHatch, type RectPx } from './hatch'
import { getLayerAppearance } from './layer-appearance'
import type { Palette } from './palette'
import { type DrawingNode, makeNode } from './picture'

/** Conductors drawn across a column; enough to show the share of copper, few enough to stay readable. */
const CONDUCTORS_DRAWN = 5

/** Kinds that flow or are laid on wet, and so fill the space between conductors. */
const FILLING_KINDS: ReadonlySet<string> = new Set(['adhesive', 'bondply', 'no-flow-prepreg', 'solder-mask'])

/** Kind of the neighbour that fills the space between a layer's conductors; null leaves it open, as on bare fingers. */
export function findFillingKind(layers: readonly { readonly kind: string }[], index: number): string | null {
  const above = layers[index - 1]?.kind
  if (above !== undefined && FILLING_KINDS.has(above)) return above
  const below = layers[index + 1]?.kind
  return below !== undefined && FILLING_KINDS.has(below) ? below : null
}

/**
 * One layer's body in a section. Copper is cut into conductors by its coverage (schematic in width, true in share);
 * dielectric layers are hatched by kind; an unbonded gap is an empty space between dashed lines.
 */
export function drawLayerBody(
  layer: Pick<ZoneLayerResult, 'kind' | 'coverageFraction'>,
  rect: RectPx,
  fillingKind: string | null,
  palette: Palette,
): DrawingNode[] {
  const appearance = getLayerAppearance(layer.kind)
  if (layer.kind === 'unbonded-gap') {
    const edge = (y: number) =>
      makeNode('line', {
        x1: rect.x,
        y1: y,
        x2: rect.x + rect.width,
        y2: y,
        stroke: palette.inkSoft,
        'stroke-width': 0.6,
        'stroke-dasharray': '5 3',
      })
    return [edge(rect.y), edge(rect.y + rect.height)]
  }
  const fill = appearance.fill === null ? 'none' : palette[appearance.fill]
  if (layer.kind === 'conductor') {
    return drawConductors(layer.coverageFraction ?? 1, rect, fill, fillingKind, palette)
  }
  return [
    makeNode('rect', { ...rect, fill, stroke: palette.inkSoft, 'stroke-width': 0.5 }),
    ...drawHatch(appearance.hatch, rect, palette.inkSoft),
  ]
}

function drawConductors(
  coverageFraction: number,
  rect: RectPx,
  fill: string,
  fillingKind: string | null,
  palette: Palette,
): DrawingNode[] {
  const stroke = { stroke: palette.ink, 'stroke-width': 0.6 }
  const between = fillingKind === null ? null : getLayerAppearance(fillingKind)
  const filling = between === null || between.fill === null ? palette.paper : palette[between.fill]
  const ground = [
    makeNode('rect', { ...rect, fill: filling, stroke: palette.hairline, 'stroke-width': 0.5 }),
    ...drawHatch(between?.hatch ?? 'none', rect, palette.inkSoft),
  ]
  if (coverageFraction <= 0) return ground
  if (coverageFraction >= 0.995) return [makeNode('rect', { ...rect, fill, ...stroke })]
  const pitch = rect.width / CONDUCTORS_DRAWN
  const width = pitch * coverageFraction
  const conductors: DrawingNode[] = []
  for (let index = 0; index < CONDUCTORS_DRAWN; index += 1) {
    const x = rect.x + index * pitch + (pitch - width) / 2
    conductors.push(makeNode('rect', { x, y: rect.y, width, height: rect.height, fill, ...stroke }))
  }
  return [...ground, ...conductors]
}
