import type { PictureFrame, PlanGround } from '@/lib/artwork'
import type { DrawnLayer, PointMm } from '@/lib/artwork-picture'
import { type DrawingNode, type Picture, PRINT_PALETTE } from '@/lib/drawing'
import { asResult } from '@/lib/engine/units'
import { clipRing, type Frame } from './clip-ring'
import { fillPath, linePath, ringsInFrame, type ToPx } from './crop-paths'

export const CROP_PX: Frame = { width: 210, height: 147 }

/** The plan's rings come in whole nanometres. */
const NM_PER_MM = 1e6

const [MARK_PX, MARK_ARM_PX] = [8, 5]
const BAR_AT_PX = { left: 8, above: 8 }
const BAR_STEPS_MM = [5, 2, 1, 0.5, 0.2, 0.1, 0.05]
/** The bar takes this share of the crop at most, so that its length stands beside it. */
const MOST_BAR_FRACTION = 0.4

interface CropOrder {
  readonly title: string
  /** What is said of it, both values included. */
  readonly said: string
  /** In the coordinates of the picture's frame. */
  readonly atMm: PointMm
  /** How much of the plane the crop shows from left to right. */
  readonly acrossMm: number
  /** Copper that is filled, the farthest first; then layers whose borders are lines. */
  readonly filled: readonly DrawnLayer[]
  readonly lined: readonly DrawnLayer[]
  readonly holes: readonly DrawnLayer[]
  readonly profiles: readonly DrawnLayer[]
  /** Outline and bends of the plan; null where artwork lies on none. */
  readonly ground: PlanGround | null
}

/** A small part of the artwork round a place, from above, with a mark on the place and a scale bar. */
export function drawCrop(order: CropOrder, frame: PictureFrame): Picture {
  const { width, height } = CROP_PX
  const scale = width / order.acrossMm
  const [middleX, middleY] = order.atMm
  const place = (xMm: number, yMm: number): [number, number] => [
    width / 2 + (xMm - middleX) * scale,
    height / 2 - (yMm - middleY) * scale,
  ]
  const toPx: ToPx = (x, y) => place(...frame.toPicture([x, y]))
  const leftOut: string[] = []
  const lay = (layers: readonly DrawnLayer[], paint: (rings: readonly number[][]) => DrawingNode) =>
    layers.flatMap((layer): DrawingNode[] => {
      const rings = ringsInFrame(layer, toPx, CROP_PX)
      if (rings === null) leftOut.push(layer.head.fileName)
      return rings === null || rings.length === 0 ? [] : [paint(rings)]
    })
  const planRings = (rings: readonly (readonly number[])[]) =>
    rings.map((ring) => clipRing(inMm(ring, place), CROP_PX)).filter((ring) => ring.length >= 6)
  const nodes: DrawingNode[] = [
    node('rect', { x: 0, y: 0, width, height, fill: PRINT_PALETTE.paper, stroke: PRINT_PALETTE.hairline }),
    ...(order.ground?.bands ?? []).flatMap(({ rings }) =>
      shade(planRings(rings), { fill: PRINT_PALETTE.allowed, stroke: PRINT_PALETTE.axis, 'stroke-dasharray': '5 3' }),
    ),
    ...order.filled.flatMap((layer, index) =>
      lay([layer], (rings) =>
        node('path', {
          d: fillPath(rings),
          'fill-rule': 'evenodd',
          fill: index === order.filled.length - 1 ? PRINT_PALETTE.copper : PRINT_PALETTE.film,
        }),
      ),
    ),
    ...lay(order.holes, (rings) =>
      node('path', {
        d: fillPath(rings),
        'fill-rule': 'evenodd',
        fill: PRINT_PALETTE.paper,
        stroke: PRINT_PALETTE.ink,
        'stroke-width': 0.6,
      }),
    ),
    // The bend's edges over the copper too: what crosses them is what it is about.
    ...(order.ground?.bands ?? []).flatMap(({ rings }) =>
      strokes(planRings(rings), { stroke: PRINT_PALETTE.axis, 'stroke-width': 0.8, 'stroke-dasharray': '5 3' }),
    ),
    ...lay(order.lined, (rings) =>
      node('path', {
        d: linePath(rings, CROP_PX),
        fill: 'none',
        stroke: PRINT_PALETTE.strain,
        'stroke-width': 0.9,
        'stroke-dasharray': '2 1.5',
      }),
    ),
    ...lay(order.profiles, (rings) =>
      node('path', { d: fillPath(rings), 'fill-rule': 'evenodd', fill: PRINT_PALETTE.ink }),
    ),
    ...(order.ground === null
      ? []
      : strokes(planRings(order.ground.part), { stroke: PRINT_PALETTE.ink, 'stroke-width': 0.9 })),
    ...drawMark(),
    ...drawBar(order.acrossMm),
  ]
  const names = (layers: readonly DrawnLayer[]) => layers.map(({ head }) => head.fileName).join(', ') || 'none'
  const description = [
    order.said,
    `${asResult(order.acrossMm, 'mm')} across, the place in the middle, from above. Filled: ${names(order.filled)}. Lines: ${names(order.lined)}.`,
    ...(leftOut.length === 0 ? [] : [`Left out, since too fine to be drawn here: ${leftOut.join(', ')}.`]),
  ].join(' ')
  return {
    title: order.title,
    description,
    widthPx: width,
    heightPx: height,
    nodes,
    table: { caption: order.title, columns: [], rows: [] },
  }
}
const node = (
  tag: string,
  attributes: DrawingNode['attributes'],
  children: DrawingNode['children'] = [],
): DrawingNode => ({
  tag,
  attributes,
  children,
})

function inMm(ringNm: readonly number[], place: (xMm: number, yMm: number) => readonly [number, number]): number[] {
  const ring: number[] = []
  for (let at = 0; at + 1 < ringNm.length; at += 2)
    ring.push(...place((ringNm[at] ?? 0) / NM_PER_MM, (ringNm[at + 1] ?? 0) / NM_PER_MM))
  return ring
}

const shade = (rings: readonly number[][], { fill = 'none' }: DrawingNode['attributes']): DrawingNode[] =>
  rings.length === 0 ? [] : [node('path', { d: fillPath(rings), 'fill-rule': 'evenodd', fill })]

function strokes(rings: readonly number[][], attributes: DrawingNode['attributes']): DrawingNode[] {
  const d = linePath(rings, CROP_PX)
  return d === '' ? [] : [node('path', { d, fill: 'none', ...attributes })]
}

/** A ring with four arms outside of it: the place itself stays free. White below, so that it is seen on copper too. */
function drawMark(): DrawingNode[] {
  const [x, y] = [CROP_PX.width / 2, CROP_PX.height / 2]
  const [from, to] = [MARK_PX, MARK_PX + MARK_ARM_PX]
  const arms = `M${x - to} ${y}H${x - from}M${x + from} ${y}H${x + to}M${x} ${y - to}V${y - from}M${x} ${y + from}V${y + to}`
  return [PRINT_PALETTE.paper, PRINT_PALETTE.limit].flatMap((stroke, index) => {
    const line = { fill: 'none', stroke, 'stroke-width': index === 0 ? 3 : 1.3 }
    return [node('circle', { cx: x, cy: y, r: MARK_PX, ...line }), node('path', { d: arms, ...line })]
  })
}

function drawBar(acrossMm: number): DrawingNode[] {
  const lengthMm = BAR_STEPS_MM.find((step) => step <= acrossMm * MOST_BAR_FRACTION) ?? acrossMm / 4
  const lengthPx = Math.round((lengthMm / acrossMm) * CROP_PX.width * 100) / 100
  const [x, y] = [BAR_AT_PX.left, CROP_PX.height - BAR_AT_PX.above]
  const text = asResult(lengthMm, 'mm')
  return [
    node('rect', {
      x: x - 4,
      y: y - 18,
      width: Math.max(lengthPx, 7 * text.length) + 8,
      height: 23,
      fill: PRINT_PALETTE.paper,
    }),
    node('path', {
      d: `M${x} ${y - 3}V${y}H${x + lengthPx}V${y - 3}`,
      fill: 'none',
      stroke: PRINT_PALETTE.ink,
      'stroke-width': 1.2,
    }),
    node('text', { x, y: y - 6, 'font-size': 11, 'font-family': PRINT_PALETTE.fontFamily, fill: PRINT_PALETTE.ink }, [
      text,
    ]),
  ]
}
