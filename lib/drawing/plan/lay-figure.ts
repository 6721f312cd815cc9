import type { Design } from '@/lib/engine'
import type { Plan } from '@/lib/plan'
import type { Palette } from '../palette'
import { type DrawingNode, makeNode, roundPx } from '../picture'
import { measureText } from '../text-metrics'
import { ARROW_EM, type LaidDimension, type Lanes, layDimensions, widthOfLanes } from './dimension-lanes'
import { boundsOfPlan, makePlanFrame, type Point, pathOfCircle } from './frame'
import { keepNear } from './keep-near'
import { setLabels, type WantedLabel } from './label-room'
import { drawPlanFigure } from './plan-figure'
import type { Room } from './room-index'

export interface LaidFigure {
  readonly width: number
  readonly height: number
  /** Paper over part. */
  readonly factor: number
  readonly nodes: readonly DrawingNode[]
  /** References for which there was no room, dimensions that the table alone gives, and how many things lie off the part. */
  readonly leftOut: {
    readonly labels: readonly string[]
    readonly dimensionIds: readonly string[]
    readonly offCount: number
  }
}

export interface FigureLayout {
  readonly palette: Palette
  /** Picture measures in a millimetre of paper. */
  readonly perMm: number
  readonly fontSize: number
  readonly width: number
  readonly highest: number
  /** Paper over part, in picture measures: the greatest of these that fits; null takes what fills the width. */
  readonly scales: readonly number[] | null
  readonly textOf: (dimension: Plan['dimensions'][number]) => string
  readonly withRoutes: boolean
  readonly withPoints: boolean
  /** Circles of the plan that are drawn larger elsewhere, by the scale; null where none are. */
  readonly detailsAt: ((factor: number) => readonly DetailCircle[]) | null
}

export interface DetailCircle {
  readonly reference: string
  readonly atMm: Point
  /** On the part. */
  readonly radiusMm: number
}

/** Room round the part for labels and for the ends of axes, in type sizes. */
const MARGIN_EM = 4
const LANE_EM = 2
/** What lies further off the part than this share of its size, or of the margin, is not drawn. */
const NEAR_SHARE = 0.05
const NEAR_MARGIN = 0.6
const ROLLING_EM = 2.4

/** The whole figure with its upper left corner at a place: part, names, dimensions, the foil's direction. Null without an outline. */
export function layPlanFigure(design: Design, whole: Plan, [x, y]: Point, layout: FigureLayout): LaidFigure | null {
  const bounds = boundsOfPlan(whole)
  if (bounds === null) return null
  const { minMm, maxMm } = bounds
  const size: Point = [maxMm[0] - minMm[0], maxMm[1] - minMm[1]]
  const { fontSize } = layout
  const margin = MARGIN_EM * fontSize
  const lay = (factor: number) => {
    const reachMm = Math.min(NEAR_SHARE * Math.max(...size, 1), (NEAR_MARGIN * margin) / factor)
    const { plan, offCount } = keepNear(whole, minMm, maxMm, reachMm)
    const dimensions = withOverall(plan, minMm, maxMm)
    const frame = makePlanFrame([x + margin, y + margin], [minMm[0], maxMm[1]], factor)
    const lanes = layDimensions(dimensions, layout.textOf, frame, { left: x, right: x + layout.width }, fontSize)
    const right = widthOfLanes(lanes.laneWidths, fontSize)
    const below = (lanes.laneCountX + 0.5) * LANE_EM * fontSize
    return {
      plan,
      offCount,
      frame,
      lanes,
      width: size[0] * factor + 2 * margin + right,
      height: size[1] * factor + 2 * margin + below + ROLLING_EM * fontSize,
    }
  }
  const fits = (factor: number) => {
    const { width, height } = lay(factor)
    return width <= layout.width && height <= layout.highest
  }
  const factor = layout.scales?.find(fits) ?? fillingFactor(size, layout, margin, fits)
  const { plan, offCount, frame, lanes, height } = lay(factor)
  const { palette, perMm, withRoutes, withPoints } = layout
  const options = { palette, perMm, withRoutes, withPoints }
  const figure = drawPlanFigure(design, plan, frame, options)
  const foot: Point = [x + margin + size[0] * factor, y + margin + size[1] * factor]
  const drawn = drawLanes(lanes, foot, margin, layout)
  const rolling = drawRolling(plan, [x, y + height - 0.9 * fontSize], layout)
  const room: Room = { left: x, right: foot[0] + margin, top: y, bottom: foot[1] + margin }
  const circles = layout.detailsAt?.(factor) ?? []
  const details = circles.map(({ atMm, radiusMm }) => {
    return makeNode('path', {
      d: pathOfCircle(frame.toPicture(atMm), radiusMm * factor),
      fill: 'none',
      stroke: palette.ink,
      'stroke-width': 0.18 * perMm,
    })
  })
  const detailLabels = circles.map(({ reference, atMm, radiusMm }): WantedLabel => {
    const [cx, cy] = frame.toPicture(atMm)
    return { text: reference, at: [cx + Math.SQRT1_2 * radiusMm * factor, cy - Math.SQRT1_2 * radiusMm * factor] }
  })
  const { set, left } = setLabels([...figure.labels, ...detailLabels], room, figure.symbols, fontSize)
  const leads = set
    .filter(({ isLed }) => isLed)
    .map(({ at, box }) =>
      makeNode('line', {
        x1: at[0],
        y1: at[1],
        x2: clamp(at[0], box.left, box.right),
        y2: clamp(at[1], box.top, box.bottom),
        stroke: layout.palette.inkSoft,
        'stroke-width': 0.13 * layout.perMm,
      }),
    )
  const labels = set.flatMap((label) => [paper(label.box, 0.75, layout), text(label.text, label.x, label.y, layout)])
  return {
    width: layout.width,
    height,
    factor,
    // Texts last: no line runs over one.
    nodes: [...figure.nodes, ...details, ...drawn.lines, ...leads, ...rolling, ...drawn.texts, ...labels],
    leftOut: { labels: left.map((label) => label.text), dimensionIds: lanes.left, offCount },
  }
}

const clamp = (value: number, low: number, high: number) => Math.max(low, Math.min(high, value))

const text = (content: string, x: number, y: number, { fontSize, palette }: FigureLayout): DrawingNode =>
  makeNode('text', { x, y, 'font-size': fontSize, fill: palette.ink }, [content])

/** The overall size is always dimensioned, as a reference where no dimension of the plan gives it. */
function withOverall(plan: Plan, minMm: Point, maxMm: Point): Plan['dimensions'] {
  const spans = (key: 0 | 1, direction: string) =>
    plan.dimensions.some(
      (each) =>
        each.direction === direction && Math.abs(each.fromMm[key] - each.toMm[key]) >= maxMm[key] - minMm[key] - 1e-6,
    )
  const overall = (id: string, direction: 'along-x' | 'along-y', toMm: Point): Plan['dimensions'][number] => ({
    id,
    direction,
    fromMm: [minMm[0], minMm[1]],
    toMm: [toMm[0], toMm[1]],
    plusMm: null,
    minusMm: null,
    isReference: true,
  })
  return [
    ...plan.dimensions,
    ...(spans(0, 'along-x') ? [] : [overall('overall-x', 'along-x', [maxMm[0], minMm[1]])]),
    ...(spans(1, 'along-y') ? [] : [overall('overall-y', 'along-y', [minMm[0], maxMm[1]])]),
  ]
}

/** Where no standard scale is asked for, or none is small enough: what fills the room. */
function fillingFactor(
  [width, height]: Point,
  layout: FigureLayout,
  margin: number,
  fits: (factor: number) => boolean,
): number {
  const room = Math.max(1, layout.width - 2 * margin)
  let factor = Math.min(room / Math.max(width, 1e-6), layout.highest / Math.max(height, 1e-6))
  for (let step = 0; step < 60 && !fits(factor); step += 1) factor *= 0.93
  return factor
}

/** Lines and arrows of the dimensions, and their sizes on paper that interrupts the lines that lead to others. */
function drawLanes(
  lanes: Lanes,
  foot: Point,
  margin: number,
  layout: FigureLayout,
): { readonly lines: readonly DrawingNode[]; readonly texts: readonly DrawingNode[] } {
  const { fontSize, palette, perMm } = layout
  const lines: DrawingNode[] = []
  const texts: DrawingNode[] = []
  const line = (a: Point, b: Point) =>
    lines.push(
      makeNode('line', { x1: a[0], y1: a[1], x2: b[0], y2: b[1], stroke: palette.ink, 'stroke-width': 0.13 * perMm }),
    )
  const arrow = ([px, py]: Point, [dx, dy]: Point) => {
    const [bx, by] = [px - dx * ARROW_EM * fontSize, py - dy * ARROW_EM * fontSize]
    const half = 0.45 * perMm
    const corner = (side: 1 | -1) => `${roundPx(bx - dy * half * side)},${roundPx(by + dx * half * side)}`
    lines.push(makeNode('path', { d: `M${roundPx(px)},${roundPx(py)}L${corner(1)}L${corner(-1)}Z`, fill: palette.ink }))
  }
  const say = (words: string, x: number, y: number) => {
    const width = measureText(words, fontSize)
    const box = { left: x, right: x + width, top: y - 0.75 * fontSize, bottom: y + 0.25 * fontSize }
    texts.push(paper(box, 1, layout), text(words, x, y, layout))
  }
  const gap = 0.8 * perMm
  const span = ({ from, to, isShort }: LaidDimension, place: (along: number) => Point, along: Point) => {
    const past = isShort ? 2 * ARROW_EM * fontSize : 0
    const turn = isShort ? -1 : 1
    line(place(from - past), place(to + past))
    arrow(place(from), [-along[0] * turn, -along[1] * turn])
    arrow(place(to), [along[0] * turn, along[1] * turn])
  }
  for (const dimension of lanes.alongX) {
    const level = foot[1] + margin + (dimension.lane + 0.9) * LANE_EM * fontSize
    for (const [px, py] of dimension.startsAt) line([px, py + gap], [px, level + gap])
    span(dimension, (at) => [at, level], [1, 0])
    say(dimension.text, dimension.textAt, level - 0.35 * fontSize)
  }
  let right = foot[0] + margin + fontSize
  const starts = lanes.laneWidths.map((width) => {
    const at = right
    right += width + fontSize
    return at
  })
  for (const dimension of lanes.alongY) {
    const level = starts[dimension.lane] ?? foot[0]
    for (const [px, py] of dimension.startsAt) line([px + gap, py], [level + gap, py])
    span(dimension, (at) => [level, at], [0, 1])
    say(dimension.text, level + 0.4 * fontSize, dimension.textAt)
  }
  return { lines, texts }
}

const paper = ({ left, right, top, bottom }: Room, opacity: number, { palette }: FigureLayout): DrawingNode =>
  makeNode('rect', {
    x: left,
    y: top,
    width: right - left,
    height: bottom - top,
    fill: palette.paper,
    'fill-opacity': opacity,
  })

function drawRolling(plan: Plan, [x, y]: Point, layout: FigureLayout): DrawingNode[] {
  const { fontSize, palette, perMm } = layout
  const deg = plan.rollingDirectionDeg
  if (deg === null) return [text('foil’s rolling direction not stated', x, y, layout)]
  const rad = (deg * Math.PI) / 180
  const middle: Point = [x + 5 * perMm, y - 0.35 * fontSize]
  const half: Point = [4 * perMm * Math.cos(rad), -Math.min(4 * perMm, fontSize) * Math.sin(rad)]
  return [
    makeNode('line', {
      x1: middle[0] - half[0],
      y1: middle[1] - half[1],
      x2: middle[0] + half[0],
      y2: middle[1] + half[1],
      stroke: palette.ink,
      'stroke-width': 0.5 * perMm,
    }),
    text(`foil rolled along this line, ${deg}° from x`, x + 11 * perMm, y, layout),
  ]
}
