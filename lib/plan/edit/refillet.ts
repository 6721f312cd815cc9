import type { PlanNode } from '../document/path-schema'
import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'
import { wholePoint } from './nodes'

/** A placed corner lies within this of its arc or point, as where corners are measured. */
const PLACED_MM = 1
const PARALLEL = 1e-6

/**
 * The inside corners of the outline that an entry of the features names, with at least this radius. What ended where an arc began or ended goes with it:
 * lines that divide areas, and dimensions.
 *
 * @returns null where an arc has no straight edge on both sides, or these are too short
 */
export function refilletCorners(plan: Plan, cornerId: string, radiusMm: number): Plan | null {
  let drawn: Plan = plan
  for (const corner of plan.corners) {
    if (corner.cornerId !== cornerId) continue
    const next = refilletOne(drawn, corner.id, radiusMm)
    if (next === null) return null
    drawn = next
  }
  return drawn === plan ? null : drawn
}

function refilletOne(plan: Plan, placedId: string, radiusMm: number): Plan | null {
  const corner = plan.corners.find(({ id }) => id === placedId)
  const outline = plan.outline
  if (corner === undefined || outline === null) return null
  const at = findCorner(outline, corner.atMm)
  if (at === null) return null
  const node = (index: number) => outline[(index + outline.length) % outline.length] as PlanNode
  const isArc = node(at).viaMm !== null
  const [start, end] = [node(at), node(isArc ? at + 1 : at)]
  const [before, after] = [node(at - 1), node(isArc ? at + 2 : at + 1)]
  if (before.viaMm !== null || (isArc && end.viaMm !== null)) return null
  const [u, v] = [unit(before.atMm, start.atMm), unit(end.atMm, after.atMm)]
  const turn = Math.atan2(cross(u, v), dot(u, v))
  const around = { before: before.atMm, start: start.atMm, end: end.atMm, after: after.atMm, via: start.viaMm, u, v }
  const arc =
    Math.abs(Math.sin(turn)) < PARALLEL ? arcBetweenParallels(around, radiusMm) : arcInCorner(around, turn, radiusMm)
  if (arc === null) return null
  if (arc === 'wide-enough') return plan
  const { from, via, to } = arc
  const nodes = outline.flatMap((each): PlanNode[] => {
    if (each === start) return [{ atMm: from, viaMm: via }, ...(isArc ? [] : [{ atMm: to, viaMm: null }])]
    return each === end ? [{ atMm: to, viaMm: end.viaMm }] : [each]
  })
  const move = (point: PointMm): PointMm =>
    isSamePoint(point, start.atMm) ? from : isSamePoint(point, end.atMm) ? to : point
  return {
    ...plan,
    outline: nodes,
    dividingLines: plan.dividingLines.map((line) => ({
      ...line,
      nodes: line.nodes.map((each) => ({ ...each, atMm: move(each.atMm) })),
    })),
    dimensions: plan.dimensions.map((each) => ({ ...each, fromMm: move(each.fromMm), toMm: move(each.toMm) })),
    corners: plan.corners.map((each) => (each.id === placedId ? { ...each, atMm: via } : each)),
  }
}

interface Around {
  readonly before: PointMm
  readonly start: PointMm
  readonly end: PointMm
  readonly after: PointMm
  readonly via: PointMm | null
  /** Ways of the straight edges before and after. */
  readonly u: PointMm
  readonly v: PointMm
}

interface Arc {
  readonly from: PointMm
  readonly via: PointMm
  readonly to: PointMm
}

function arcInCorner(
  { before, start, end, after, via: presentVia, u, v }: Around,
  turn: number,
  radiusMm: number,
): Arc | 'wide-enough' | null {
  // Where both straight edges would meet.
  const alongMm = cross([end[0] - start[0], end[1] - start[1]], v) / cross(u, v)
  const tip: PointMm = [start[0] + u[0] * alongMm, start[1] + u[1] * alongMm]
  const tangent = Math.tan(Math.abs(turn) / 2)
  if (presentVia !== null && lengthOf(start, tip) / tangent >= radiusMm) return 'wide-enough'
  const tangentMm = radiusMm * tangent
  if (tangentMm >= lengthOf(before, tip) || tangentMm >= lengthOf(tip, after)) return null
  const side = Math.sign(turn)
  const from: PointMm = [tip[0] - u[0] * tangentMm, tip[1] - u[1] * tangentMm]
  const centre: PointMm = [from[0] - side * u[1] * radiusMm, from[1] + side * u[0] * radiusMm]
  const out = unit(centre, tip)
  return wholeArc(
    from,
    [centre[0] + out[0] * radiusMm, centre[1] + out[1] * radiusMm],
    [tip[0] + v[0] * tangentMm, tip[1] + v[1] * tangentMm],
  )
}

/** A part that widens by a step: the arc runs on from one of the parallel edges, and ends on the other at an angle. */
function arcBetweenParallels(
  { before, start, end, after, via, u, v }: Around,
  radiusMm: number,
): Arc | 'wide-enough' | null {
  if (via === null) return null
  const chord: PointMm = [end[0] - start[0], end[1] - start[1]]
  const [lengthMm, stepMm] = [dot(chord, u), Math.abs(cross(u, chord))]
  if (stepMm === 0 || lengthMm <= 0 || dot(u, v) < 0) return null
  if ((stepMm ** 2 + lengthMm ** 2) / (2 * stepMm) >= radiusMm) return 'wide-enough'
  const wantedMm = Math.sqrt(2 * stepMm * radiusMm - stepMm ** 2)
  const side = Math.sign(cross(u, chord))
  // Smooth where the arc leaves its edge: halfway it has come less than half the way across.
  const isSmoothAtStart = Math.abs(cross(u, [via[0] - start[0], via[1] - start[1]])) < stepMm / 2
  const moreMm = wantedMm - lengthMm
  if (moreMm >= (isSmoothAtStart ? lengthOf(before, start) : lengthOf(end, after))) return null
  const half = Math.asin(wantedMm / radiusMm) / 2
  const [ahead, across] = [radiusMm * Math.sin(half), radiusMm * (1 - Math.cos(half))]
  const normal: PointMm = [-u[1] * side, u[0] * side]
  if (isSmoothAtStart) {
    const from: PointMm = [start[0] - u[0] * moreMm, start[1] - u[1] * moreMm]
    return wholeArc(
      from,
      [from[0] + u[0] * ahead + normal[0] * across, from[1] + u[1] * ahead + normal[1] * across],
      end,
    )
  }
  const to: PointMm = [end[0] + u[0] * moreMm, end[1] + u[1] * moreMm]
  return wholeArc(start, [to[0] - u[0] * ahead - normal[0] * across, to[1] - u[1] * ahead - normal[1] * across], to)
}

function wholeArc(from: PointMm, via: PointMm, to: PointMm): Arc | null {
  const [first, middle, last] = [wholePoint(from), wholePoint(via), wholePoint(to)]
  return first === null || middle === null || last === null ? null : { from: first, via: middle, to: last }
}

/** Index of the point where the corner's arc begins, or of the corner itself where it is sharp. */
function findCorner(outline: readonly PlanNode[], atMm: PointMm): number | null {
  let best: { index: number; mm: number } | null = null
  outline.forEach(({ atMm: point, viaMm }, index) => {
    const mm = lengthOf(viaMm ?? point, atMm)
    if (mm <= PLACED_MM && (best === null || mm < best.mm)) best = { index, mm }
  })
  return best === null ? null : (best as { index: number }).index
}

const isSamePoint = (a: PointMm, b: PointMm) => a[0] === b[0] && a[1] === b[1]
const lengthOf = (a: PointMm, b: PointMm) => Math.hypot(b[0] - a[0], b[1] - a[1])
const dot = (a: PointMm, b: PointMm) => a[0] * b[0] + a[1] * b[1]
const cross = (a: PointMm, b: PointMm) => a[0] * b[1] - a[1] * b[0]

function unit(from: PointMm, to: PointMm): PointMm {
  const length = lengthOf(from, to)
  return length === 0 ? [0, 0] : [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
}
