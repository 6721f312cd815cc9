import {
  distanceBetweenEdgeSets,
  distanceBetweenRegions,
  edgesOfRegion,
  type LineOrArc,
  locateInRegion,
  nearestOnEdge,
  pointAt,
  type Region,
  roundPoint,
} from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM } from '../document/primitives'
import { areasOf } from '../topology/areas'
import { regionOf } from './placed'

/** An edge this near to the outline runs along it. Our choice: what rounding of arcs leaves. */
const ALONG_NM = 1000

/**
 * How far each stiffener reaches past the end of a coverlay, by its id: least distance of the opening's edge across the part from the edge of the
 * stiffener. 0 where the opening goes on past the stiffener. Only openings that reach the outline end the coverlay; a window within the part does not.
 */
export function measureOverlaps(plan: Plan): ReadonlyMap<string, number> {
  const { part } = areasOf(plan)
  const found = new Map<string, number>()
  if (part === null) return found
  const openings = plan.coverlayOpenings
    .map(({ nodes }) => regionOf(nodes))
    .map((region) => ({ region, ...splitEdges(edgesOfRegion(region), part) }))
    .filter(({ across, along }) => across.length > 0 && along.length > 0)
  for (const { stiffenerId, nodes } of plan.stiffeners) {
    const stiffener = regionOf(nodes)
    const { across } = splitEdges(edgesOfRegion(stiffener), part)
    for (const opening of openings) {
      if (across.length === 0 || distanceBetweenRegions(stiffener, opening.region).distanceNm > 0) continue
      const isOver = opening.across.every((edge) =>
        [0, 0.5, 1].every((share) => isInOrOn(stiffener, roundPoint(pointAt(edge, share)))),
      )
      const overlapMm = isOver ? (distanceBetweenEdgeSets(opening.across, across)?.distanceNm ?? 0) / NM_PER_MM : 0
      found.set(stiffenerId, Math.min(overlapMm, found.get(stiffenerId) ?? Number.POSITIVE_INFINITY))
    }
  }
  return found
}

const nearestNm = (region: Region, point: readonly [number, number]) =>
  Math.min(...edgesOfRegion(region).map((edge) => nearestOnEdge(edge, point).distanceNm))

const isInOrOn = (region: Region, point: readonly [number, number]) =>
  locateInRegion(region, point) !== 'outside' || nearestNm(region, point) <= ALONG_NM

/** Edges that run across the part, and those along its border. */
function splitEdges(edges: readonly LineOrArc[], part: Region): { across: LineOrArc[]; along: LineOrArc[] } {
  const isAcross = (edge: LineOrArc) => {
    const middle = roundPoint(pointAt(edge, 0.5))
    return locateInRegion(part, middle) === 'inside' && nearestNm(part, middle) > ALONG_NM
  }
  return { across: edges.filter(isAcross), along: edges.filter((edge) => !isAcross(edge)) }
}
