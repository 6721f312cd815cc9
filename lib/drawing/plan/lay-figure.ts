import type { Design } from '@/lib/engine'
import type { Plan } from '@/lib/plan'
import type { Palette } from '../palette'
import { type DrawingNode, makeNode, roundPx } from '../picture'
import { type LaidDimension, type Lanes, layDimensions } from './dimension-lanes'
import { boundsOfPlan, makePlanFrame, type Point } from './frame'
import { keepNear } from './keep-near'
import { type Room, setLabels } from './label-room'
import { drawPlanFigure } from './plan-figure'

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
}

/** Room round the part for labels and for the ends of axes, in type sizes. */
const MARGIN_EM = 4
const LANE_EM = 2
const ROLLING_EM = 2.4

/** The whole figure with its upper left corner at a place: part, names, dimensions, the foil's direction. Null without an outline. */
export function layPlanFigure(design: Design, whole: Plan, [x, y]: Point, layout: FigureLayout): LaidFigure | null {
  const bounds = boundsOfPlan(whole)
  if (bounds === null) return null
  const { minMm, maxMm } = bounds
  const size: Point = [maxMm[0] - minMm[0], maxMm[1] - minMm[1]]
  const { fontSize } = layout
  const { plan, offCount } = keepNear(whole, minMm, maxMm, 0.05 * Math.max(...size, 1))
  const dimensions = withOverall(plan, minMm, maxMm)
  const margin = MARGIN_EM * fontSize
  const lay = (factor: number) => {
    const frame = makePlanFrame([x + margin, y + margin], [minMm[0], maxMm[1]], factor)
    const lanes = layDimensions(dimensions, layout.textOf, frame, { left: x, right: x + layout.width }, fontSize)
    const right = lanes.laneWidths.reduce((sum, each) => sum + each + fontSize, fontSize)
    const below = (lanes.laneCountX + 0.5) * LANE_EM * fontSize
    return {
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
  const { frame, lanes, height } = lay(factor)
  const { palette, perMm, withRoutes, withPoints } = layout
  const options = { palette, perMm, withRoutes, withPoints }
  const figure = drawPlanFigure(design, plan, frame, options)
  const foot: Point = [x + margin + size[0] * factor, y + margin + size[1] * factor]
  const drawn = drawLanes(lanes, foot, margin, layout)
  const rolling = drawRolling(plan, [x, y + height - 0.9 * fontSize], layout)
  const room: Room = { left: x, right: foot[0] + margin, top: y, bottom: foot[1] + margin }
  const { set, left } = setLabels(figure.labels, room, [], fontSize)
  const labels = set.flatMap((label): DrawingNode[] => [
    ...(label.isLed
      ? [
          makeNode('line', {
            x1: label.at[0],
            y1: label.at[1],
            x2: clamp(label.at[0], label.box.left, label.box.right),
            y2: clamp(label.at[1], label.box.top, label.box.bottom),
            stroke: layout.palette.inkSoft,
            'stroke-width': 0.13 * layout.perMm,
          }),
        ]
      : []),
    makeNode('rect', {
      x: label.box.left,
      y: label.box.top,
      width: label.box.right - label.box.left,
      height: label.box.bottom - label.box.top,
      fill: layout.palette.paper,
      'fill-opacity': 0.75,
    }),
    text(label.text, label.x, label.y, layout),
  ])
  return {
    width: layout.width,
    height,
    factor,
    nodes: [...figure.nodes, ...drawn, ...rolling, ...labels],
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

function drawLanes(lanes: Lanes, foot: Point, margin: number, layout: FigureLayout): DrawingNode[] {
  const { fontSize, palette, perMm } = layout
  const line = (a: Point, b: Point) =>
    makeNode('line', { x1: a[0], y1: a[1], x2: b[0], y2: b[1], stroke: palette.ink, 'stroke-width': 0.13 * perMm })
  const arrow = ([px, py]: Point, [dx, dy]: Point) => {
    const [bx, by] = [px - dx * 2.2 * perMm, py - dy * 2.2 * perMm]
    const half = 0.45 * perMm
    const corner = (side: 1 | -1) => `${roundPx(bx - dy * half * side)},${roundPx(by + dx * half * side)}`
    return makeNode('path', { d: `M${roundPx(px)},${roundPx(py)}L${corner(1)}L${corner(-1)}Z`, fill: palette.ink })
  }
  const gap = 0.8 * perMm
  const along = lanes.alongX.flatMap(({ from, to, startsAt, lane, text: words, textAt }: LaidDimension) => {
    const level = foot[1] + margin + (lane + 0.9) * LANE_EM * fontSize
    return [
      ...startsAt.map(([px, py]) => line([px, py + gap], [px, level + gap])),
      line([from, level], [to, level]),
      arrow([from, level], [-1, 0]),
      arrow([to, level], [1, 0]),
      text(words, textAt, level - 0.35 * fontSize, layout),
    ]
  })
  let right = foot[0] + margin + fontSize
  const starts = lanes.laneWidths.map((width) => {
    const at = right
    right += width + fontSize
    return at
  })
  const up = lanes.alongY.flatMap(({ from, to, startsAt, lane, text: words, textAt }: LaidDimension) => {
    const level = starts[lane] ?? foot[0]
    return [
      ...startsAt.map(([px, py]) => line([px + gap, py], [level + gap, py])),
      line([level, from], [level, to]),
      arrow([level, from], [0, -1]),
      arrow([level, to], [0, 1]),
      text(words, level + 0.4 * fontSize, textAt, layout),
    ]
  })
  return [...along, ...up]
}

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
