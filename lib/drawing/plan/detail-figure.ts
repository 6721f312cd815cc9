import type { Design } from '@/lib/engine'
import { edgesOfLoop, edgesOfPath, flattenEdges, type LineOrArc } from '@/lib/geometry'
import { areasOf, closedEndsOf, NM_PER_MM, type Plan, pathInNm } from '@/lib/plan'
import type { Palette } from '../palette'
import { type DrawingNode, makeNode, roundPx } from '../picture'
import { clipPolygon, clipPolyline } from './clip-to-circle'
import { makePlanFrame, type Point } from './frame'
import {
  BEND_MM,
  drawTearStop,
  EDGE_MM,
  FINE_MM,
  fillOfZone,
  RIDGE_DASHES_MM,
  TEAR_STOP_MM,
  VALLEY_DASHES_MM,
} from './plan-marks'

export interface DetailFrame {
  /** Of the detail, on the part and in the picture. */
  readonly centreMm: Point
  readonly centre: Point
  readonly radius: number
  /** Picture measures in a millimetre of the part. */
  readonly factor: number
  /** Picture measures in a millimetre of paper. */
  readonly perMm: number
  readonly palette: Palette
}

/** Half a hundredth of a millimetre on paper at 10:1. */
const FLATTEN_NM = 500
const HOLE_SIDES = 72

/** What lies within a circle of the plan, at a larger scale: borders, areas, slits with their reliefs, axes, stiffeners and openings. */
export function drawDetailFigure(
  design: Design,
  plan: Plan,
  { centreMm, centre, radius, factor, perMm, palette }: DetailFrame,
  tearStopsMm: readonly Point[],
): DrawingNode[] {
  const frame = makePlanFrame(centre, centreMm, factor)
  const toPicture = ([x, y]: readonly [number, number]) => frame.toPicture([x / NM_PER_MM, y / NM_PER_MM])
  // Edges are told by where they begin: a line ends where its last one does.
  const flatten = (edges: readonly LineOrArc[]): Point[] => flattenEdges(edges, FLATTEN_NM).map(toPicture)
  const withEnd = (edges: readonly LineOrArc[]): Point[] => {
    const end = edges.at(-1)?.to
    return end === undefined ? [] : [...flatten(edges), toPicture(end)]
  }
  const draw = (points: readonly Point[], widthMm: number, more: Readonly<Record<string, string | number>> = {}) =>
    clipPolyline(points, centre, radius).map((piece) =>
      makeNode('path', {
        d: `M${piece.map(([x, y]) => `${roundPx(x)},${roundPx(y)}`).join('L')}`,
        fill: 'none',
        stroke: palette.ink,
        'stroke-width': widthMm * perMm,
        ...more,
      }),
    )
  const loop = (nodes: NonNullable<Plan['outline']>) => withEnd(edgesOfLoop(pathInNm(nodes)))
  const path = (nodes: NonNullable<Plan['outline']>) => withEnd(edgesOfPath(pathInNm(nodes)))
  const dashed = (lengthsMm: readonly number[]) => ({
    'stroke-dasharray': lengthsMm.map((mm) => roundPx(mm * perMm)).join(' '),
  })
  const fills = areasOf(plan).areas.flatMap(({ region, zoneId }) => {
    const loops = [region.outer, ...region.holes]
      .map((edges) => clipPolygon(flatten(edges), centre, radius))
      .filter((corners) => corners.length > 2)
    if (loops.length === 0) return []
    return [
      makeNode('path', {
        d: loops.map((corners) => `M${corners.map((at) => at.map(roundPx)).join('L')}Z`).join(''),
        fill: fillOfZone(design, zoneId, palette),
        'fill-opacity': 0.3,
        'fill-rule': 'evenodd',
        stroke: 'none',
      }),
    ]
  })
  const hole = (atMm: Point, radiusMm: number) => {
    const [x, y] = frame.toPicture(atMm)
    const rim = Array.from({ length: HOLE_SIDES + 1 }, (_, side): Point => {
      const turn = (2 * Math.PI * side) / HOLE_SIDES
      return [x + radiusMm * factor * Math.cos(turn), y + radiusMm * factor * Math.sin(turn)]
    })
    const inside = clipPolygon(rim.slice(1), centre, radius)
    const d = `M${inside.map((at) => at.map(roundPx)).join('L')}Z`
    return inside.length < 3
      ? []
      : [makeNode('path', { d, fill: palette.paper, stroke: 'none' }), ...draw(rim, EDGE_MM)]
  }
  const isNear = (at: Point) => {
    const [x, y] = frame.toPicture(at)
    return Math.hypot(x - centre[0], y - centre[1]) < radius - 2 * TEAR_STOP_MM * perMm
  }
  return [
    ...fills,
    ...plan.dividingLines.flatMap(({ nodes }) => draw(path(nodes), FINE_MM * 1.4, dashed([1, 1]))),
    ...plan.stiffeners.flatMap(({ nodes }) => draw(loop(nodes), FINE_MM * 1.4, dashed([3, 1]))),
    ...plan.coverlayOpenings.flatMap(({ nodes }) => draw(loop(nodes), FINE_MM, dashed([0.7, 0.7]))),
    ...plan.cutOuts.flatMap(({ nodes }) => draw(loop(nodes), EDGE_MM)),
    ...(plan.outline === null ? [] : draw(loop(plan.outline), EDGE_MM, { 'stroke-linejoin': 'round' })),
    // Both edges of a slit: a wide line of ink, and paper along its middle.
    ...plan.slits.flatMap((slit) => {
      const width = ((slit.widthMm ?? 0) * factor) / perMm
      const points = path(slit.nodes)
      const ink = draw(points, width <= EDGE_MM ? EDGE_MM : width + EDGE_MM)
      const middle = width <= EDGE_MM ? [] : draw(points, width - EDGE_MM, { stroke: palette.paper })
      const reliefs = closedEndsOf(plan, slit).flatMap(({ atMm, reliefDiameterMm }) =>
        reliefDiameterMm === null || reliefDiameterMm === 0 ? [] : hole(atMm, reliefDiameterMm / 2),
      )
      return [...ink, ...reliefs, ...middle]
    }),
    ...plan.bendLines.flatMap(({ bendId, fromMm, toMm }) =>
      draw([frame.toPicture(fromMm), frame.toPicture(toMm)], BEND_MM, {
        stroke: palette.strain,
        ...dashed(
          design.bends.find(({ id }) => id === bendId)?.insideFace === 'top' ? VALLEY_DASHES_MM : RIDGE_DASHES_MM,
        ),
      }),
    ),
    ...tearStopsMm.filter(isNear).map((at) => drawTearStop(frame.toPicture(at), { palette, perMm })),
    makeNode('circle', {
      cx: centre[0],
      cy: centre[1],
      r: radius,
      fill: 'none',
      stroke: palette.ink,
      'stroke-width': FINE_MM * perMm,
    }),
  ]
}
