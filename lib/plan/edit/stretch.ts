import type { Plan } from '../document/plan-schema'
import { NM_PER_MM, type PointMm } from '../document/primitives'

/** A straight line through which a plan is pulled apart, such as the axis of a bend. */
export interface Cut {
  readonly fromMm: PointMm
  readonly toMm: PointMm
}

/** Fields that hold a place; steps and sizes stay as they are. */
const PLACES: ReadonlySet<string> = new Set(['atMm', 'viaMm', 'fromMm', 'toMm', 'markMm', 'firstContactMm'])

/**
 * The plan with more length across a line: what lies beyond it moves away by the length, and the line itself
 * comes to lie in the middle between the borders on its sides, as far as it may. Straight edges at right angles to the line get longer. Routes, which are drawn coarsely, lie flatter where
 * they cross at a slant; within the area of the line their corners come to lie near its borders, so that they run straight between.
 *
 * @param cornersWithinMm  how far from a border of the area the corners of routes may lie
 * @param byMm  more than 0; the move is rounded to whole nanometres once, so that all places move alike
 * @returns null where that would change a shape: an arc or a slanted edge crosses the line, or the line meets the outline more than twice
 *   (another arm would be pulled apart with it)
 */
export function stretchPlan(plan: Plan, line: Cut, byMm: number, cornersWithinMm = Infinity): Plan | null {
  const cut = orient(line)
  const [ax, ay] = cut.fromMm
  const along = [cut.toMm[0] - ax, cut.toMm[1] - ay] as const
  const length = Math.hypot(...along)
  if (length === 0 || plan.outline === null) return null
  const side = ([x, y]: PointMm) => (x - ax) * -along[1] + (y - ay) * along[0]
  if (countCrossings(plan.outline, true, side, along) !== 2) return null
  const closed = [...plan.cutOuts, ...plan.stiffeners, ...plan.coverlayOpenings, ...plan.components]
  const open = [...plan.slits, ...plan.dividingLines]
  if (closed.some(({ nodes }) => countCrossings(nodes, true, side, along) === null)) return null
  if (open.some(({ nodes }) => countCrossings(nodes, false, side, along) === null)) return null
  const whole = toWhole((-along[1] / length) * byMm, (along[0] / length) * byMm)
  const free = measureFree(plan, cut)
  const share = shareOfLine(free, byMm)
  const ofLine = toWhole(whole[0] * share, whole[1] * share)
  const move = (point: PointMm): PointMm => {
    const at = side(point)
    const [dx, dy] = at > 0 ? whole : at === 0 ? ofLine : [0, 0]
    return toWhole(point[0] + dx, point[1] + dy)
  }
  const drawn = { ...plan, routes: plan.routes.map((route) => drawInCorners(route, cut, free, cornersWithinMm)) }
  return movePlaces(drawn, move) as Plan
}

/**
 * The plan with a bend line moved to the middle between the borders of its area, and corners of routes there drawn in to them as in `stretchPlan`.
 *
 * @returns null where there is no such line, or no border on one side
 */
export function centreBendLine(plan: Plan, lineId: string, cornersWithinMm: number): Plan | null {
  const line = plan.bendLines.find(({ id }) => id === lineId)
  const free = line === undefined ? null : measureFree(plan, line)
  if (line === undefined || free === null) return null
  const [nx, ny] = frameOf(line).normal
  const by = (free.beyond - free.before) / 2
  const move = ([x, y]: PointMm): PointMm => toWhole(x + nx * by, y + ny * by)
  return {
    ...plan,
    bendLines: plan.bendLines.map((each) =>
      each === line ? { ...each, fromMm: move(each.fromMm), toMm: move(each.toMm) } : each,
    ),
    routes: plan.routes.map((route) => drawInCorners(route, line, free, cornersWithinMm)),
  }
}

/** Corners of a route within the area of the line, drawn in to its borders. */
function drawInCorners(
  route: Plan['routes'][number],
  cut: Cut,
  free: Free | null,
  withinMm: number,
): Plan['routes'][number] {
  if (free === null || !Number.isFinite(withinMm)) return route
  const { before, beyond } = free
  const frame = frameOf(cut)
  return {
    ...route,
    nodes: route.nodes.map((node) => {
      const { off, along } = placeIn(frame, node.atMm)
      if (along < 0 || along > frame.length || off <= -before || off >= beyond) return node
      const drawn = off < 0 ? Math.min(before + off, withinMm) - before : beyond - Math.min(beyond - off, withinMm)
      const [nx, ny] = frame.normal
      return { ...node, atMm: toWhole(node.atMm[0] + nx * (drawn - off), node.atMm[1] + ny * (drawn - off)) }
    }),
  }
}

/** What moves is what lies to the right, or above a level line: the drawing's origin stays. */
function orient({ fromMm, toMm }: Cut): Cut {
  const movesRight = fromMm[1] > toMm[1] || (fromMm[1] === toMm[1] && toMm[0] > fromMm[0])
  return movesRight ? { fromMm, toMm } : { fromMm: toMm, toMm: fromMm }
}

export interface Frame {
  readonly from: PointMm
  readonly direction: readonly [number, number]
  readonly normal: readonly [number, number]
  readonly length: number
}

export function frameOf({ fromMm, toMm }: Cut): Frame {
  const [dx, dy] = [toMm[0] - fromMm[0], toMm[1] - fromMm[1]]
  const length = Math.hypot(dx, dy)
  return { from: fromMm, direction: [dx / length, dy / length], normal: [-dy / length, dx / length], length }
}

/** How far a place lies off the line, on the side that moves, and how far along it. */
export function placeIn({ from, direction, normal }: Frame, [px, py]: PointMm): { off: number; along: number } {
  const [x, y] = [px - from[0], py - from[1]]
  return { off: x * normal[0] + y * normal[1], along: x * direction[0] + y * direction[1] }
}

/** From the line to the nearest border on either side, through its middle. */
interface Free {
  readonly before: number
  readonly beyond: number
}

/** Null where one side has no border. */
export function measureFree(plan: Plan, cut: Cut): Free | null {
  const frame = frameOf(cut)
  const fromMiddle = (point: PointMm) => {
    const { off, along } = placeIn(frame, point)
    return { off, along: along - frame.length / 2 }
  }
  let before = Number.POSITIVE_INFINITY
  let beyond = Number.POSITIVE_INFINITY
  for (const nodes of [plan.outline ?? [], ...plan.dividingLines.map((line) => line.nodes)]) {
    for (const [index, { atMm }] of nodes.entries()) {
      const next = nodes[index + 1]?.atMm ?? (nodes === plan.outline ? nodes[0]?.atMm : undefined)
      if (next === undefined) continue
      const [a, b] = [fromMiddle(atMm), fromMiddle(next)]
      if (a.along === b.along || a.along * b.along > 0) continue
      const at = a.off + ((b.off - a.off) * a.along) / (a.along - b.along)
      if (at > 0) beyond = Math.min(beyond, at)
      if (at < 0) before = Math.min(before, -at)
    }
  }
  return Number.isFinite(before) && Number.isFinite(beyond) ? { before, beyond } : null
}

/** By what share of the length the line itself moves: from 0, where it lies nearest to what moves away, to 1. */
function shareOfLine(free: Free | null, byMm: number): number {
  if (free === null) return 0.5
  return Math.min(1, Math.max(0, ((free.before + free.beyond + byMm) / 2 - free.before) / byMm))
}

type Side = (point: PointMm) => number
type Nodes = readonly { readonly atMm: PointMm; readonly viaMm: PointMm | null }[]

/** How often a path crosses the line at right angles and straight; null where it crosses in another way. */
function countCrossings(nodes: Nodes, isClosed: boolean, side: Side, along: readonly [number, number]): number | null {
  let count = 0
  for (const [index, { atMm, viaMm }] of nodes.entries()) {
    const next = nodes[index + 1] ?? (isClosed ? nodes[0] : undefined)
    if (next === undefined) break
    const sides = [side(atMm), side(next.atMm), ...(viaMm === null ? [] : [side(viaMm)])]
    const crosses = sides.some((each) => each > 0) && sides.some((each) => each < 0)
    if (viaMm !== null && (crosses || sides.includes(0))) return null
    if (!crosses) continue
    const [dx, dy] = [next.atMm[0] - atMm[0], next.atMm[1] - atMm[1]]
    // Whole nanometres over metres at most: right angles are right to far below a nanometre.
    if (Math.abs(dx * along[0] + dy * along[1]) > 1e-9 * Math.hypot(dx, dy) * Math.hypot(...along)) return null
    count += 1
  }
  return count
}

export const toWhole = (x: number, y: number): PointMm => [
  Math.round(x * NM_PER_MM) / NM_PER_MM,
  Math.round(y * NM_PER_MM) / NM_PER_MM,
]

function movePlaces(value: unknown, move: (point: PointMm) => PointMm): unknown {
  if (Array.isArray(value)) return value.map((each) => movePlaces(each, move))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).map(([key, each]) => {
      if (PLACES.has(key) && each !== null) return [key, move(each as PointMm)]
      if (key === 'anchorsMm') return [key, (each as PointMm[]).map(move)]
      return [key, movePlaces(each, move)]
    }),
  )
}
