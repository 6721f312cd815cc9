import {
  type Distance,
  distanceBetweenEdgeSets,
  edgesOfLoop,
  type LineOrArc,
  type Location,
  type Loop,
  locatePoint,
  reversePath,
  signedAreaOf,
} from '../path'
import type { PointNm } from '../predicates'
import { checkLoop, type LoopIssue } from './check-loop'

/** A piece of the plane: one outer border, counter-clockwise, and the borders of its holes, clockwise. */
export interface Region {
  readonly outer: readonly LineOrArc[]
  readonly holes: readonly (readonly LineOrArc[])[]
  readonly areaNm2: number
}

export interface RegionIssue extends LoopIssue {
  /** -1 for the outer loop, else the number of the hole. */
  readonly loop: number
}

export type RegionResult =
  | { readonly ok: true; readonly region: Region }
  | { readonly ok: false; readonly issues: readonly RegionIssue[] }

/** A region of loops in whichever direction they are given. Each loop is simple; whether holes keep clear of it is asked of `locateLoop`. */
export function makeRegion(outer: Loop, holes: readonly Loop[] = []): RegionResult {
  const issues = [outer, ...holes].flatMap((loop, at) => checkLoop(loop).map((issue) => ({ ...issue, loop: at - 1 })))
  if (issues.length > 0) return { ok: false, issues }
  return { ok: true, region: makeCheckedRegion(edgesOfLoop(outer), holes.map(edgesOfLoop)) }
}

/** Of closed edges that are known to be simple. */
export function makeCheckedRegion(outer: readonly LineOrArc[], holes: readonly (readonly LineOrArc[])[]): Region {
  const turn = (edges: readonly LineOrArc[], wanted: number) =>
    Math.sign(signedAreaOf(edges)) === wanted ? edges : reversePath(edges)
  const region = { outer: turn(outer, 1), holes: holes.map((hole) => turn(hole, -1)) }
  const areaNm2 = signedAreaOf(region.outer) + region.holes.reduce((sum, hole) => sum + signedAreaOf(hole), 0)
  return { ...region, areaNm2 }
}

export function edgesOfRegion({ outer, holes }: Region): LineOrArc[] {
  return [...outer, ...holes.flat()]
}

/** Exact, for a whole point. */
export function locateInRegion(region: Region, point: PointNm): Location {
  const where = locatePoint(region.outer, point)
  if (where !== 'inside') return where
  for (const hole of region.holes) {
    const inHole = locatePoint(hole, point)
    if (inHole === 'on') return 'on'
    if (inHole === 'inside') return 'outside'
  }
  return 'inside'
}

/** Distance between two pieces of the plane, 0 where they share a point, one within the other included. */
export function distanceBetweenRegions(first: Region, second: Region): Distance {
  const [a, b] = [first.outer[0]?.from, second.outer[0]?.from]
  if (a !== undefined && locateInRegion(second, a) !== 'outside') return { distanceNm: 0, from: a, to: a }
  if (b !== undefined && locateInRegion(first, b) !== 'outside') return { distanceNm: 0, from: b, to: b }
  return (
    distanceBetweenEdgeSets(edgesOfRegion(first), edgesOfRegion(second)) ?? {
      distanceNm: Number.POSITIVE_INFINITY,
      from: [0, 0],
      to: [0, 0],
    }
  )
}

/** A whole point well inside: of a few along the border's inner side, the one with most room. */
export function findInnerPoint(region: Region): PointNm | null {
  const edges = edgesOfRegion(region)
  const ys = [
    ...new Set(
      edges.flatMap(({ from, to, ...rest }) => ['through' in rest ? rest.through[1] : from[1], from[1], to[1]]),
    ),
  ].sort((a, b) => a - b)
  let best: { readonly point: PointNm; readonly width: number } | null = null
  for (let at = 0; at + 1 < ys.length; at += 1) {
    const [low, high] = [ys[at], ys[at + 1]]
    if (low === undefined || high === undefined || high - low < 2) continue
    const y = Math.round((low + high) / 2)
    const xs = crossingsAt(edges, y)
    for (let one = 0; one + 1 < xs.length; one += 1) {
      const [left, right] = [xs[one], xs[one + 1]]
      if (left === undefined || right === undefined) continue
      const point: PointNm = [Math.round((left + right) / 2) + 0, y + 0]
      const width = Math.min(right - left, high - low)
      if ((best === null || width > best.width) && locateInRegion(region, point) === 'inside') best = { point, width }
    }
  }
  return best?.point ?? null
}

function crossingsAt(edges: readonly LineOrArc[], y: number): number[] {
  return edges
    .flatMap((edge): number[] => {
      if (edge.kind === 'line') {
        if (edge.from[1] > y === edge.to[1] > y) return []
        return [edge.from[0] + ((y - edge.from[1]) / (edge.to[1] - edge.from[1])) * (edge.to[0] - edge.from[0])]
      }
      const off = y - edge.centre[1]
      if (Math.abs(off) >= edge.radiusNm) return []
      const half = Math.sqrt(edge.radiusNm ** 2 - off ** 2)
      return [edge.centre[0] - half, edge.centre[0] + half]
    })
    .sort((a, b) => a - b)
}
