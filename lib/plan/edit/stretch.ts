import type { Plan } from '../document/plan-schema'
import { NM_PER_MM, type PointMm } from '../document/primitives'

/** A straight line through which a plan is pulled apart, such as the axis of a bend. */
interface Cut {
  readonly fromMm: PointMm
  readonly toMm: PointMm
}

/** Fields that hold a place; steps and sizes stay as they are. */
const PLACES: ReadonlySet<string> = new Set(['atMm', 'viaMm', 'fromMm', 'toMm', 'markMm', 'firstContactMm'])

/**
 * The plan with more length across a line: what lies beyond it moves away by the length, and the line itself
 * comes to lie in the middle between the borders on its sides, as far as it may. Straight edges at right angles to the line get longer; routes, which are drawn coarsely, lie flatter where
 * they cross at a slant.
 *
 * @param byMm  more than 0; the move is rounded to whole nanometres once, so that all places move alike
 * @returns null where that would change a shape: an arc or a slanted edge crosses the line, or the line meets the outline more than twice
 *   (another arm would be pulled apart with it)
 */
export function stretchPlan(plan: Plan, line: Cut, byMm: number): Plan | null {
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
  const share = shareOfLine(plan, cut, byMm)
  const ofLine = toWhole(whole[0] * share, whole[1] * share)
  const move = (point: PointMm): PointMm => {
    const at = side(point)
    const [dx, dy] = at > 0 ? whole : at === 0 ? ofLine : [0, 0]
    return toWhole(point[0] + dx, point[1] + dy)
  }
  return movePlaces(plan, move) as Plan
}

/** What moves is what lies to the right, or above a level line: the drawing's origin stays. */
function orient({ fromMm, toMm }: Cut): Cut {
  const movesRight = fromMm[1] > toMm[1] || (fromMm[1] === toMm[1] && toMm[0] > fromMm[0])
  return movesRight ? { fromMm, toMm } : { fromMm: toMm, toMm: fromMm }
}

/** By what share of the length the line itself moves: from 0, where it lies nearest to what moves away, to 1. */
function shareOfLine(plan: Plan, { fromMm, toMm }: Cut, byMm: number): number {
  const [x, y] = [(fromMm[0] + toMm[0]) / 2, (fromMm[1] + toMm[1]) / 2]
  const [dx, dy] = [toMm[0] - fromMm[0], toMm[1] - fromMm[1]]
  const length = Math.hypot(dx, dy)
  const [nx, ny] = [-dy / length, dx / length]
  const fromLine = ([px, py]: PointMm) => ({
    off: (px - x) * nx + (py - y) * ny,
    along: ((px - x) * dx + (py - y) * dy) / length,
  })
  let before = Number.POSITIVE_INFINITY
  let beyond = Number.POSITIVE_INFINITY
  for (const nodes of [plan.outline ?? [], ...plan.dividingLines.map((line) => line.nodes)]) {
    for (const [index, { atMm }] of nodes.entries()) {
      const next = nodes[index + 1]?.atMm ?? (nodes === plan.outline ? nodes[0]?.atMm : undefined)
      if (next === undefined) continue
      const [a, b] = [fromLine(atMm), fromLine(next)]
      if (a.along === b.along || a.along * b.along > 0) continue
      const at = a.off + ((b.off - a.off) * a.along) / (a.along - b.along)
      if (at > 0) beyond = Math.min(beyond, at)
      if (at < 0) before = Math.min(before, -at)
    }
  }
  if (!Number.isFinite(before) || !Number.isFinite(beyond)) return 0.5
  return Math.min(1, Math.max(0, ((before + beyond + byMm) / 2 - before) / byMm))
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

const toWhole = (x: number, y: number): PointMm => [
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
