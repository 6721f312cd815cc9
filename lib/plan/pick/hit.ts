import { locatePoint, nearestOnEdge } from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM, type PointMm } from '../document/primitives'
import { toNm } from '../document/to-geometry'
import { fieldsOf, handlesOf } from '../edit/drawn'
import type { DrawnRef, PointRef } from '../edit/plan-edit'
import { isNearBox, type PickOptions } from './near'
import { type Traced, traceAll } from './traced'

/** What a pointer meets: a point of it, one of its ways, or its inside. */
export interface Hit {
  readonly ref: DrawnRef
  readonly part: 'point' | 'edge' | 'inside'
  /** The point, where one was met. */
  readonly point: PointRef | null
  /** The way that was met, by the point that it starts from. */
  readonly edgeAt: number | null
  readonly distanceMm: number
}

const RANK = { point: 0, edge: 1, inside: 2 } as const

/**
 * What lies at a place, from the geometry and never from the picture: points before ways before insides; among alike ones the nearer, then the
 * smaller, since what is small lies upon what is large.
 */
export function hitsAt(plan: Plan, atMm: PointMm, { toleranceMm, hidden }: PickOptions): Hit[] {
  const found = traceAll(plan)
    .filter(({ ref, box }) => hidden?.has(ref.list) !== true && isNearBox(box, atMm, toleranceMm))
    .flatMap((traced) => {
      const hit = hitOne(plan, traced, atMm, toleranceMm)
      return hit === null ? [] : [{ hit, size: sizeOf(traced) }]
    })
  return found
    .sort(
      (a, b) =>
        RANK[a.hit.part] - RANK[b.hit.part] ||
        (a.hit.part === 'inside' ? 0 : a.hit.distanceMm - b.hit.distanceMm) ||
        a.size - b.size,
    )
    .map(({ hit }) => hit)
}

function hitOne(plan: Plan, { ref, edges, starts, isClosed }: Traced, atMm: PointMm, toleranceMm: number): Hit | null {
  const handles = handlesOf(fieldsOf(plan, ref) ?? {})
  let best: Hit | null = null
  for (const { point, atMm: handle } of handles) {
    const distanceMm = Math.hypot(handle[0] - atMm[0], handle[1] - atMm[1])
    if (distanceMm <= toleranceMm && distanceMm < (best?.distanceMm ?? Number.POSITIVE_INFINITY)) {
      best = { ref, part: 'point', point, edgeAt: null, distanceMm }
    }
  }
  if (best !== null) return best
  const at = toNm(atMm)
  edges.forEach((edge, index) => {
    const distanceMm = nearestOnEdge(edge, at).distanceNm / NM_PER_MM
    if (distanceMm <= toleranceMm && distanceMm < (best?.distanceMm ?? Number.POSITIVE_INFINITY)) {
      best = { ref, part: 'edge', point: null, edgeAt: starts[index] ?? null, distanceMm }
    }
  })
  if (best !== null) return best
  if (!isClosed || edges.length === 0 || locatePoint(edges, at) !== 'inside') return null
  return { ref, part: 'inside', point: null, edgeAt: null, distanceMm: 0 }
}

const sizeOf = ({ box }: Traced) => (box.maxX - box.minX) * (box.maxY - box.minY)
