import { distanceBetweenEdgeSets, edgesOfPath } from '@/lib/geometry'
import type { PlanNode } from '../document/path-schema'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM, type PointMm } from '../document/primitives'
import { pathInNm } from '../document/to-geometry'
import { wholePoint } from './nodes'

/** Beyond the band's edge, mm: a route that turns right on it would turn inside for the last nanometre. */
const BEYOND_MM = 0.05

/**
 * The routes of a conductor square to the axis of a bend all through its band; the offset that they made there is made beside the band.
 *
 * @returns null where none begins and ends outside of the band, so that nothing can be squared
 */
export function squareRoutes(plan: Plan, conductorId: string, bendId: string, bandWidthMm: number): Plan | null {
  let hasMoved = false
  const routes = plan.routes.map((route) => {
    if (route.conductorId !== conductorId) return route
    let nodes: readonly PlanNode[] = route.nodes
    for (const line of plan.bendLines) {
      if (line.bendId !== bendId) continue
      const squared = squareOne(nodes, line, bandWidthMm / 2 + BEYOND_MM)
      if (squared !== null) {
        nodes = squared
        hasMoved = true
      }
    }
    return nodes === route.nodes ? route : { ...route, nodes: [...nodes] }
  })
  return hasMoved ? { ...plan, routes } : null
}

function squareOne(
  nodes: readonly PlanNode[],
  { fromMm, toMm }: Plan['bendLines'][number],
  halfMm: number,
): readonly PlanNode[] | null {
  const length = Math.hypot(toMm[0] - fromMm[0], toMm[1] - fromMm[1])
  if (length === 0) return null
  const along: PointMm = [(toMm[0] - fromMm[0]) / length, (toMm[1] - fromMm[1]) / length]
  const across: PointMm = [-along[1], along[0]]
  const heightOf = ([x, y]: PointMm) => (x - fromMm[0]) * across[0] + (y - fromMm[1]) * across[1]
  const placeOf = ([x, y]: PointMm) => (x - fromMm[0]) * along[0] + (y - fromMm[1]) * along[1]
  for (let first = 0; first + 1 < nodes.length; first += 1) {
    const start = nodes[first] as PlanNode
    if (Math.abs(heightOf(start.atMm)) < halfMm) continue
    const side = Math.sign(heightOf(start.atMm))
    const last = nodes.findIndex((node, index) => index > first && -side * heightOf(node.atMm) >= halfMm)
    if (last === -1) continue
    const isOnSide = nodes.slice(first + 1, last).every(({ atMm }) => side * heightOf(atMm) < halfMm)
    const end = nodes[last] as PlanNode
    const place = placeOf(start.atMm)
    // Only where the way goes through the band's width, and does not pass beside its ends.
    if (!isOnSide || place < 0 || place > length) continue
    const height = heightOf(end.atMm)
    const turn = wholePoint([
      fromMm[0] + along[0] * place + across[0] * height,
      fromMm[1] + along[1] * place + across[1] * height,
    ])
    if (turn === null || (turn[0] === end.atMm[0] && turn[1] === end.atMm[1] && last === first + 1)) return null
    const isThere = turn[0] === end.atMm[0] && turn[1] === end.atMm[1]
    return [
      ...nodes.slice(0, first),
      { atMm: start.atMm, viaMm: null },
      ...(isThere ? [] : [{ atMm: turn, viaMm: null }]),
      ...nodes.slice(last),
    ]
  }
  return null
}

/**
 * All routes of a conductor moved sideways, parallel to themselves: to the left of the way they are drawn where positive.
 *
 * @returns null where one has an arc, or turns back on itself
 */
export function offsetRoutes(plan: Plan, conductorId: string, byMm: number): Plan | null {
  const routes: Plan['routes'] = []
  for (const route of plan.routes) {
    if (route.conductorId !== conductorId) {
      routes.push(route)
      continue
    }
    const nodes = offsetPath(route.nodes, byMm)
    if (nodes === null) return null
    routes.push({ ...route, nodes })
  }
  return { ...plan, routes }
}

function offsetPath(nodes: readonly PlanNode[], byMm: number): PlanNode[] | null {
  const normals: PointMm[] = []
  for (let at = 0; at + 1 < nodes.length; at += 1) {
    const [from, to] = [nodes[at] as PlanNode, nodes[at + 1] as PlanNode]
    const length = Math.hypot(to.atMm[0] - from.atMm[0], to.atMm[1] - from.atMm[1])
    if (from.viaMm !== null || length === 0) return null
    normals.push([-(to.atMm[1] - from.atMm[1]) / length, (to.atMm[0] - from.atMm[0]) / length])
  }
  const moved: PlanNode[] = []
  for (const [at, { atMm }] of nodes.entries()) {
    const [a, b] = [normals[at - 1] ?? normals[at], normals[at] ?? normals[at - 1]]
    if (a === undefined || b === undefined) return null
    // Both edges keep their distance where they meet.
    const share = 1 + a[0] * b[0] + a[1] * b[1]
    if (share < 0.1) return null
    const point = wholePoint([atMm[0] + (byMm * (a[0] + b[0])) / share, atMm[1] + (byMm * (a[1] + b[1])) / share])
    if (point === null) return null
    moved.push({ atMm: point, viaMm: null })
  }
  return moved
}

export interface RouteClash {
  readonly conductorIds: readonly [string, string]
  readonly layerId: string
  /** Distance between middles that would keep widths and space apart, mm. */
  readonly neededMm: number
}

interface DrawnConductor {
  readonly id: string
  readonly layerId: string | null
  readonly widthMm: number | null
  readonly spaceMm: number | null
}

/** Routes of different conductors on one layer that lie nearer to each other than their widths and spaces ask for: as drawn they would touch. */
export function findRouteClashes(plan: Plan, conductors: readonly DrawnConductor[]): RouteClash[] {
  const known = new Map(conductors.map((conductor) => [conductor.id, conductor]))
  const drawn = plan.routes.flatMap(({ conductorId, layerId, widthMm, nodes }) => {
    const conductor = known.get(conductorId)
    const on = layerId ?? conductor?.layerId ?? null
    return on === null || conductor === undefined
      ? []
      : [{ conductor, on, widthMm: widthMm ?? conductor.widthMm ?? 0, edges: edgesOfPath(pathInNm(nodes)) }]
  })
  const found = new Map<string, RouteClash>()
  for (const [at, one] of drawn.entries()) {
    for (const other of drawn.slice(at + 1)) {
      if (one.on !== other.on || one.conductor.id === other.conductor.id) continue
      const spaceMm = Math.max(one.conductor.spaceMm ?? 0, other.conductor.spaceMm ?? 0)
      const neededMm = (one.widthMm + other.widthMm) / 2 + spaceMm
      const apartMm =
        (distanceBetweenEdgeSets(one.edges, other.edges)?.distanceNm ?? Number.POSITIVE_INFINITY) / NM_PER_MM
      if (apartMm >= neededMm - 1e-6) continue
      const key = `${one.conductor.id} ${other.conductor.id}`
      const before = found.get(key)?.neededMm ?? 0
      found.set(key, {
        conductorIds: [one.conductor.id, other.conductor.id],
        layerId: one.on,
        neededMm: Math.max(before, neededMm),
      })
    }
  }
  return [...found.values()]
}
