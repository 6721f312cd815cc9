import type { Design } from '@/lib/engine'
import { edgesOfLoop, flattenEdges, type LineOrArc } from '@/lib/geometry'
import { areasOf, closedEndsOf, NM_PER_MM, type Plan, pathInNm } from '@/lib/plan'
import type { Palette } from '../palette'
import { type DrawingNode, makeNode, roundPx } from '../picture'
import { listDetailPlaces } from './detail-places'
import { boundsOfPlan, hatchOf, type PlanFrame, type Point, pathOfCircle, pathOfEdges, pathOfNodes } from './frame'
import { drawHoleSymbol, reachOfHoleSymbol } from './hole-symbol'
import type { WantedLabel } from './label-room'
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
import { makePlanReferences } from './references'
import type { Room } from './room-index'

/** What is drawn of a plan, and the short names that it wants beside things, most needed first. */
export interface PlanFigure {
  readonly nodes: readonly DrawingNode[]
  readonly labels: readonly WantedLabel[]
  /** Symbols, which no label may hide. */
  readonly symbols: readonly Room[]
}

export interface FigureOptions {
  readonly palette: Palette
  /** Picture measures in a millimetre of paper: 1 on a sheet, more in pixels. */
  readonly perMm: number
  /** Conductor routes too: coarse, so that no drawing goes out with them. */
  readonly withRoutes: boolean
  /** Numbers at the points of the outline: of no use where no table of them stands beside. */
  readonly withPoints: boolean
}

/** Our choices, in millimetres of paper. */
const HATCH_STEP_MM = 2
const POINT_MM = 0.4
/** More points than these of the outline are told by the table alone. */
const MOST_NUMBERED = 60

/** One picture of a plan for every exit: sheet, report and screen take it at their own scale. */
export function drawPlanFigure(design: Design, plan: Plan, frame: PlanFrame, options: FigureOptions): PlanFigure {
  const { palette, perMm } = options
  const names = makePlanReferences(design)
  const bounds = boundsOfPlan(plan)
  const nodes: DrawingNode[] = []
  const labels: WantedLabel[] = []
  const symbols: Room[] = []
  const symbol = ([x, y]: Point, reach: number) =>
    symbols.push({ left: x - reach, right: x + reach, top: y - reach, bottom: y + reach })
  const name = (text: string | undefined, at: Point) => {
    if (text !== undefined) labels.push({ text, at })
  }
  const stroke = (d: string, widthMm: number, more: Readonly<Record<string, string | number>> = {}) =>
    nodes.push(makeNode('path', { d, fill: 'none', stroke: palette.ink, 'stroke-width': widthMm * perMm, ...more }))
  const dashes = (lengthsMm: readonly number[]) => lengthsMm.map((mm) => roundPx(mm * perMm)).join(' ')
  drawAreas(design, plan, frame, options, nodes)
  for (const { nodes: line } of plan.dividingLines) {
    stroke(pathOfNodes(line, frame, false), FINE_MM * 1.4, { 'stroke-dasharray': dashes([1, 1]) })
  }
  for (const { stiffenerId, nodes: loop } of plan.stiffeners) {
    const corners = flatten(edgesOfLoop(pathInNm(loop)), frame)
    stroke(hatchOf(corners, HATCH_STEP_MM * perMm), FINE_MM * 0.7, { stroke: palette.inkSoft })
    stroke(pathOfNodes(loop, frame, true), FINE_MM * 1.4, { 'stroke-dasharray': dashes([3, 1]) })
    name(names.stiffeners.get(stiffenerId), middleOf(corners))
  }
  for (const { openingId, nodes: loop } of plan.coverlayOpenings) {
    stroke(pathOfNodes(loop, frame, true), FINE_MM, { 'stroke-dasharray': dashes([0.7, 0.7]) })
    name(names.openings.get(openingId), middleOf(flatten(edgesOfLoop(pathInNm(loop)), frame)))
  }
  for (const { atMm, sizeMm, isRound } of plan.pads) {
    if (sizeMm === null) continue
    const [x, y] = frame.toPicture(atMm)
    const [width, height] = [sizeMm[0] * frame.factor, sizeMm[1] * frame.factor]
    const look = { fill: 'none', stroke: palette.copper, 'stroke-width': FINE_MM * perMm }
    symbols.push({ left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 })
    nodes.push(
      isRound === true
        ? makeNode('circle', { cx: x, cy: y, r: width / 2, ...look })
        : makeNode('rect', { x: x - width / 2, y: y - height / 2, width, height, ...look }),
    )
  }
  if (options.withRoutes) {
    for (const { nodes: route } of plan.routes) {
      stroke(pathOfNodes(route, frame, false), FINE_MM, { stroke: palette.copper })
    }
  }
  for (const { componentId, nodes: loop } of plan.components) {
    stroke(pathOfNodes(loop, frame, true), FINE_MM)
    name(names.components.get(componentId), middleOf(flatten(edgesOfLoop(pathInNm(loop)), frame)))
  }
  for (const slit of plan.slits) {
    const d = pathOfNodes(slit.nodes, frame, false)
    const widthMm = ((slit.widthMm ?? 0) * frame.factor) / perMm
    stroke(d, Math.max(EDGE_MM, widthMm))
    for (const { atMm, reliefDiameterMm } of closedEndsOf(plan, slit)) {
      const radiusMm = (reliefDiameterMm ?? 0) / 2
      // One that is larger than the part would leave the picture; the review finds it.
      if (radiusMm === 0 || bounds === null || !reachesWithin(atMm, radiusMm, bounds)) continue
      const reach = radiusMm * frame.factor
      stroke(pathOfCircle(frame.toPicture(atMm), reach), Math.min(EDGE_MM, reach / 2 / perMm), { fill: palette.paper })
    }
    // Both edges of a wide one: paper along its middle.
    if (widthMm > 2 * EDGE_MM) stroke(d, widthMm - EDGE_MM, { stroke: palette.paper })
  }
  for (const { connectorId, fromMm, toMm } of plan.connectorEnds) {
    const [from, to] = [frame.toPicture(fromMm), frame.toPicture(toMm)]
    stroke(`M${from.map(roundPx)}L${to.map(roundPx)}`, 2 * EDGE_MM, { stroke: palette.copper })
    name(names.connectors.get(connectorId), between(from, to))
  }
  for (const cutOut of plan.cutOuts) stroke(pathOfNodes(cutOut.nodes, frame, true), EDGE_MM)
  if (plan.outline !== null) {
    stroke(pathOfNodes(plan.outline, frame, true), EDGE_MM, { 'stroke-linejoin': 'round' })
    const isNumbered = options.withPoints && plan.outline.length <= MOST_NUMBERED
    plan.outline.forEach(({ atMm }, index) => {
      const at = frame.toPicture(atMm)
      if (!isNumbered) return
      nodes.push(makeNode('circle', { cx: at[0], cy: at[1], r: POINT_MM * perMm, fill: palette.ink }))
      symbol(at, POINT_MM * perMm)
      name(String(index + 1), at)
    })
  }
  const bendLabels: WantedLabel[] = []
  for (const { bendId, fromMm, toMm } of plan.bendLines) {
    const [from, to] = [frame.toPicture(fromMm), frame.toPicture(toMm)]
    const bend = design.bends.find(({ id }) => id === bendId)
    // Past the edges, as an axis is drawn.
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
    const past = (2.5 * perMm) / length
    const ends = [
      [from[0] - past * (to[0] - from[0]), from[1] - past * (to[1] - from[1])],
      [to[0] + past * (to[0] - from[0]), to[1] + past * (to[1] - from[1])],
    ]
    stroke(`M${ends[0]?.map(roundPx)}L${ends[1]?.map(roundPx)}`, BEND_MM, {
      stroke: palette.strain,
      'stroke-dasharray': dashes(bend?.insideFace === 'top' ? VALLEY_DASHES_MM : RIDGE_DASHES_MM),
    })
    const words = names.bends.get(bendId)
    if (words !== undefined) bendLabels.push({ text: words, at: between(from, to) })
  }
  const holeLabels = plan.holes.flatMap((hole): WantedLabel[] => {
    const at = design.features.holes.findIndex(({ id }) => id === hole.holeId)
    const drillMm = design.features.holes[at]?.drillMm ?? null
    for (const place of placesOfHole(hole)) {
      const [centre, trueRadius] = [frame.toPicture(place), ((drillMm ?? 0) * frame.factor) / 2]
      nodes.push(...drawHoleSymbol(at, centre, trueRadius, { palette, perMm }))
      symbol(centre, reachOfHoleSymbol(at, trueRadius, perMm))
    }
    const text = names.holes.get(hole.holeId)
    return text === undefined ? [] : [{ text, at: frame.toPicture(hole.atMm) }]
  })
  const tearStopLabels = listDetailPlaces(design, plan).flatMap(({ tearStop, placesMm }): WantedLabel[] =>
    tearStop === null
      ? []
      : placesMm.map((place) => {
          const at = frame.toPicture(place)
          nodes.push(drawTearStop(at, options))
          symbol(at, TEAR_STOP_MM * perMm)
          return { text: tearStop, at }
        }),
  )
  const datumLabels = plan.datums.map(({ letter, fromMm, toMm }): WantedLabel => {
    const [from, to] = [frame.toPicture(fromMm), frame.toPicture(toMm ?? fromMm)]
    const at = between(from, to)
    nodes.push(
      makeNode('path', {
        d: `M${roundPx(at[0])},${roundPx(at[1])}l${roundPx(1.2 * perMm)},${roundPx(2.1 * perMm)}h${roundPx(-2.4 * perMm)}Z`,
        fill: palette.ink,
      }),
    )
    symbols.push({
      left: at[0] - 1.2 * perMm,
      right: at[0] + 1.2 * perMm,
      top: at[1],
      bottom: at[1] + 2.1 * perMm,
    })
    return { text: `[${letter}]`, at }
  })
  const flags = [
    ...plan.markings.map(({ atMm }, index): WantedLabel => ({ text: `M${index + 1}`, at: frame.toPicture(atMm) })),
    ...plan.notes.flatMap(({ atMm }, index): WantedLabel[] =>
      atMm === null ? [] : [{ text: `N${index + 1}`, at: frame.toPicture(atMm) }],
    ),
  ]
  const zoneLabels = areasOf(plan).areas.flatMap(({ zoneId, innerMm }): WantedLabel[] => {
    const text = zoneId === null ? undefined : names.zones.get(zoneId)
    return text === undefined ? [] : [{ text, at: frame.toPicture(innerMm), isOnPlace: true }]
  })
  return {
    nodes,
    labels: [...zoneLabels, ...bendLabels, ...datumLabels, ...holeLabels, ...tearStopLabels, ...flags, ...labels],
    symbols,
  }
}

function drawAreas(
  design: Design,
  plan: Plan,
  frame: PlanFrame,
  { palette }: FigureOptions,
  nodes: DrawingNode[],
): void {
  for (const { region, zoneId } of areasOf(plan).areas) {
    nodes.push(
      makeNode('path', {
        d: [region.outer, ...region.holes].map((loop) => pathOfEdges(loop, frame, true)).join(''),
        fill: fillOfZone(design, zoneId, palette),
        'fill-opacity': 0.3,
        'fill-rule': 'evenodd',
        stroke: 'none',
      }),
    )
  }
}

const FLATTEN_NM = 5000

const flatten = (edges: readonly LineOrArc[], frame: PlanFrame): Point[] =>
  flattenEdges(edges, FLATTEN_NM).map(([x, y]) => frame.toPicture([x / NM_PER_MM, y / NM_PER_MM]))

const between = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]

function middleOf(points: readonly Point[]): Point {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2]
}

const reachesWithin = ([x, y]: Point, reach: number, { minMm, maxMm }: NonNullable<ReturnType<typeof boundsOfPlan>>) =>
  x - reach >= minMm[0] && x + reach <= maxMm[0] && y - reach >= minMm[1] && y + reach <= maxMm[1]

/** Every hole of a pattern, in mm. */
export function placesOfHole({ atMm, columns, rows, columnStepMm, rowStepMm }: Plan['holes'][number]): Point[] {
  const column: Point = columnStepMm ?? [0, 0]
  const row: Point = rowStepMm ?? [0, 0]
  return Array.from({ length: columns * rows }, (_, index): Point => {
    const [i, j] = [index % columns, Math.floor(index / columns)]
    return [atMm[0] + i * column[0] + j * row[0], atMm[1] + i * column[1] + j * row[1]]
  })
}
