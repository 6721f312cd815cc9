import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'
import { type Cut, type Frame, frameOf, measureFree, placeIn, toWhole } from './stretch'

type Nodes = NonNullable<Plan['outline']>
type Node = Nodes[number]

/** Places this near to each other are one: what a hand draws. */
const JOINED_MM = 0.05
/** Whole nanometres over metres at most: what differs by less runs along. */
const ALONG_MM = 1e-5

/** One long edge of an area, at one end of its bend line. */
interface Side {
  /** The edge begins at this node of the outline. */
  readonly at: number
  /** Where it moves to, along the line. */
  readonly moveMm: number
}

/**
 * The plan with an area made wider: the two edges of the outline that its bend line ends on move apart, half of the width each, with the fillets that they end in.
 * Where an edge goes on past the area it gets a step at the border. Whatever is drawn in the area stays where it is.
 *
 * @param line  of a bend across the area
 * @param byMm  more than 0
 * @returns null where that would take more than moving edges: the line ends on something else than straight edges at right angles to it, a corner is none of
 *   these, or what lies beside the area is no wider than it would become
 */
export function widenPlan(plan: Plan, line: Cut, byMm: number): Plan | null {
  const free = measureFree(plan, line)
  const { outline } = plan
  if (outline === null || free === null) return null
  const frame = frameOf(line)
  const sides = [findSide(outline, frame, 0, -byMm / 2), findSide(outline, frame, frame.length, byMm / 2)]
  const moved = new Map<number, number>()
  const steps = new Map<number, readonly PointMm[]>()
  for (const side of sides) {
    if (side === null || !moveSide(outline, frame, free, side, moved, steps)) return null
  }
  const shift = (point: PointMm, byAlongMm: number): PointMm =>
    toWhole(point[0] + frame.direction[0] * byAlongMm, point[1] + frame.direction[1] * byAlongMm)
  const joinedTo = (point: PointMm): number => {
    const at = outline.findIndex(({ atMm }) => Math.hypot(atMm[0] - point[0], atMm[1] - point[1]) <= JOINED_MM)
    return moved.get(at) ?? 0
  }
  return {
    ...plan,
    outline: outline.flatMap((node, at): Node[] => {
      const by = moved.get(at) ?? 0
      // An arc belongs to the node that it begins at: it moves where both of its ends do.
      const own: Node = {
        ...node,
        atMm: shift(node.atMm, by),
        viaMm: node.viaMm === null ? null : shift(node.viaMm, by),
      }
      return [own, ...(steps.get(at) ?? []).map((atMm): Node => ({ ...node, atMm, viaMm: null }))]
    }),
    dividingLines: plan.dividingLines.map((each) => ({
      ...each,
      nodes: each.nodes.map((node) => ({ ...node, atMm: shift(node.atMm, joinedTo(node.atMm)) })),
    })),
    bendLines: plan.bendLines.map((each) => {
      const end = (point: PointMm): PointMm => {
        const { off, along } = placeIn(frame, point)
        if (off <= -free.before || off >= free.beyond) return point
        if (Math.abs(along) <= JOINED_MM) return shift(point, -byMm / 2)
        return Math.abs(along - frame.length) <= JOINED_MM ? shift(point, byMm / 2) : point
      }
      return { ...each, fromMm: end(each.fromMm), toMm: end(each.toMm) }
    }),
  }
}

const after = (outline: Nodes, at: number): number => (at + 1) % outline.length
const before = (outline: Nodes, at: number): number => (at + outline.length - 1) % outline.length

/** The straight edge at right angles to the line that crosses it at one of its ends. */
function findSide(outline: Nodes, frame: Frame, alongMm: number, moveMm: number): Side | null {
  const at = outline.findIndex((node, index) => {
    const next = outline[after(outline, index)]
    if (next === undefined || node.viaMm !== null) return false
    const [a, b] = [placeIn(frame, node.atMm), placeIn(frame, next.atMm)]
    return a.off * b.off < 0 && Math.abs(a.along - b.along) <= ALONG_MM && Math.abs(a.along - alongMm) <= JOINED_MM
  })
  return at < 0 ? null : { at, moveMm }
}

/** Notes what moves with an edge, and the steps that it gets; false where a corner does not allow it. */
function moveSide(
  outline: Nodes,
  frame: Frame,
  free: { readonly before: number; readonly beyond: number },
  { at, moveMm }: Side,
  moved: Map<number, number>,
  steps: Map<number, readonly PointMm[]>,
): boolean {
  const border = (off: number): number | null =>
    off > free.beyond + JOINED_MM ? free.beyond : off < -free.before - JOINED_MM ? -free.before : null
  const added: PointMm[] = []
  const end = after(outline, at)
  for (const [node, isStart] of [
    [at, true],
    [end, false],
  ] as const) {
    const place = outline[node]
    if (place === undefined) return false
    const { off, along } = placeIn(frame, place.atMm)
    const borderMm = border(off)
    if (borderMm !== null) {
      const on = pointAt(frame, borderMm, along)
      const beyond = pointAt(frame, borderMm, along + moveMm)
      added.push(...(isStart ? [on, beyond] : [beyond, on]))
      continue
    }
    moved.set(node, moveMm)
    const step = isStart ? before : after
    let last = node
    let next = step(outline, node)
    // The edge between two nodes is an arc where the first of them says so.
    const isArc = (isStart ? outline[next] : outline[last])?.viaMm !== null
    if (isArc) {
      moved.set(next, moveMm)
      last = next
      next = step(outline, next)
      if ((isStart ? outline[next] : outline[last])?.viaMm !== null) return false
    }
    const [from, to] = [outline[last], outline[next]]
    if (from === undefined || to === undefined) return false
    const [a, b] = [placeIn(frame, from.atMm), placeIn(frame, to.atMm)]
    // What it ends on runs along the line, and stays as it runs.
    if (Math.abs(a.off - b.off) > ALONG_MM) return false
    if ((b.along - a.along) * (b.along - a.along - moveMm) <= 0) return false
  }
  if (added.length > 0) steps.set(at, added)
  return true
}

function pointAt({ from, direction, normal }: Frame, off: number, along: number): PointMm {
  return toWhole(from[0] + direction[0] * along + normal[0] * off, from[1] + direction[1] * along + normal[1] * off)
}
