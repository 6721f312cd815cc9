import type { PlanNode } from '../document/path-schema'
import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'
import { wholePoint } from './nodes'

/**
 * A stiffener that reaches further along the part: the edge that crosses the part nearest to a bend moves towards it, and the sides follow the outline.
 *
 * @param byMm  distance that the edge moves
 * @returns null where that edge does not run from a point of the outline to another
 */
export function lengthenStiffener(plan: Plan, stiffenerId: string, byMm: number): Plan | null {
  const { outline } = plan
  if (outline === null) return null
  let hasMoved = false
  const stiffeners = plan.stiffeners.map((stiffener) => {
    if (stiffener.stiffenerId !== stiffenerId) return stiffener
    const nodes = lengthen(stiffener.nodes, outline, plan.bendLines, byMm)
    if (nodes === null) return stiffener
    hasMoved = true
    return { ...stiffener, nodes }
  })
  return hasMoved ? { ...plan, stiffeners } : null
}

function lengthen(
  nodes: readonly PlanNode[],
  outline: readonly PlanNode[],
  lines: Plan['bendLines'],
  byMm: number,
): PlanNode[] | null {
  const middles = lines.map(({ fromMm, toMm }): PointMm => [(fromMm[0] + toMm[0]) / 2, (fromMm[1] + toMm[1]) / 2])
  let best: { at: number; mm: number; towards: PointMm } | null = null
  for (const [at, { atMm, viaMm }] of nodes.entries()) {
    const next = nodes[(at + 1) % nodes.length] as PlanNode
    if (viaMm !== null) continue
    const middle: PointMm = [(atMm[0] + next.atMm[0]) / 2, (atMm[1] + next.atMm[1]) / 2]
    for (const towards of middles) {
      const mm = Math.hypot(towards[0] - middle[0], towards[1] - middle[1])
      if (best === null || mm < best.mm) best = { at, mm, towards }
    }
  }
  if (best === null) return null
  const [a, b] = [nodes[best.at] as PlanNode, nodes[(best.at + 1) % nodes.length] as PlanNode]
  const length = Math.hypot(b.atMm[0] - a.atMm[0], b.atMm[1] - a.atMm[1])
  if (length === 0) return null
  let normal: PointMm = [-(b.atMm[1] - a.atMm[1]) / length, (b.atMm[0] - a.atMm[0]) / length]
  if ((best.towards[0] - a.atMm[0]) * normal[0] + (best.towards[1] - a.atMm[1]) * normal[1] < 0) {
    normal = [-normal[0], -normal[1]]
  }
  const [left, right] = [walk(outline, a.atMm, normal, byMm), walk(outline, b.atMm, normal, byMm)]
  if (left === null || right === null) return null
  const inserted = [...left, ...reverse(right)]
  const ordered = [...nodes.slice(best.at + 1), ...nodes.slice(0, best.at)].filter((node) => node !== b)
  return [...inserted, ...ordered]
}

/** Along the outline from one of its points until it has gone so far towards the bend: the points passed, the first and last included. */
function walk(outline: readonly PlanNode[], from: PointMm, normal: PointMm, byMm: number): PlanNode[] | null {
  const start = outline.findIndex(({ atMm }) => atMm[0] === from[0] && atMm[1] === from[1])
  if (start === -1) return null
  const heightOf = ([x, y]: PointMm) => (x - from[0]) * normal[0] + (y - from[1]) * normal[1]
  for (const step of [1, -1]) {
    const passed: PlanNode[] = []
    for (let count = 0; count < outline.length; count += 1) {
      const at = (start + step * count + outline.length * 2) % outline.length
      const to = (at + step + outline.length) % outline.length
      const [here, next] = [outline[at] as PlanNode, outline[to] as PlanNode]
      const via = (step === 1 ? here : next).viaMm
      const [low, high] = [heightOf(here.atMm), heightOf(next.atMm)]
      if (high < low - 1e-9) break
      passed.push({ atMm: here.atMm, viaMm: via })
      if (high < byMm - 1e-9) continue
      // An arc that goes on past the height cannot be cut simply.
      if (via !== null && high > byMm + 1e-9) return null
      const share = high === low ? 1 : (byMm - low) / (high - low)
      const last =
        via === null
          ? wholePoint([
              here.atMm[0] + (next.atMm[0] - here.atMm[0]) * share,
              here.atMm[1] + (next.atMm[1] - here.atMm[1]) * share,
            ])
          : next.atMm
      return last === null ? null : [...passed, { atMm: last, viaMm: null }]
    }
  }
  return null
}

/** The same way back: the arc of an edge stands with the point that it begins at. */
function reverse(path: readonly PlanNode[]): PlanNode[] {
  return path.toReversed().map(({ atMm }, at) => ({ atMm, viaMm: path[path.length - 2 - at]?.viaMm ?? null }))
}
