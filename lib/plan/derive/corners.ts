import { directionAt, type LineOrArc, locatePoint, type PointNm } from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM, type PointMm } from '../document/primitives'
import { toMm, toNm } from '../document/to-geometry'
import { areasOf } from '../topology/areas'

/** An inside corner of the outline, or of a cut-out: where the border turns into the part. */
export interface CornerMeasure {
  /** Of the features' corner that is placed here; null where none is. */
  readonly cornerId: string | null
  readonly atMm: PointMm
  /** 0 where two edges meet without an arc. */
  readonly radiusMm: number
  /** Zones whose areas end in it. */
  readonly zoneIds: readonly string[]
}

/** Turns below this are drawn straight: the rounding of an arc's ends. */
const STRAIGHT_RAD = 1e-3
/** A placed corner lies within this of its arc or point. Our choice. */
const PLACED_MM = 1

/** Inside corners in the order in which the outline is drawn, then those of the cut-outs: what numbers them on a drawing. */
export function measureCorners(plan: Plan): CornerMeasure[] {
  const { part, areas } = areasOf(plan)
  if (part === null) return []
  const found = [part.outer, ...part.holes].flatMap(findInsideCorners)
  return found.map(({ at, points, radiusNm }): CornerMeasure => {
    const near = plan.corners
      .map(({ cornerId, atMm }) => ({
        cornerId,
        mm: Math.min(...points.map((point) => distance(point, toNm(atMm)))) / NM_PER_MM,
      }))
      .filter(({ mm }) => mm <= PLACED_MM)
      .sort((one, other) => one.mm - other.mm)[0]
    const zoneIds = areas.flatMap(({ region, zoneId }) =>
      zoneId !== null && points.some((point) => touches([region.outer, ...region.holes], point)) ? [zoneId] : [],
    )
    return {
      cornerId: near?.cornerId ?? null,
      atMm: toMm(at),
      radiusMm: radiusNm / NM_PER_MM,
      zoneIds: [...new Set(zoneIds)],
    }
  })
}

const distance = (a: readonly [number, number], b: readonly [number, number]) => Math.hypot(a[0] - b[0], a[1] - b[1])

const touches = (loops: readonly (readonly LineOrArc[])[], point: PointNm) =>
  loops.some((edges) => locatePoint(edges, point) === 'on')

/** The part lies to the left of its borders: an arc or a corner that turns right is an inside one. */
function findInsideCorners(
  edges: readonly LineOrArc[],
): { readonly at: PointNm; readonly points: readonly PointNm[]; readonly radiusNm: number }[] {
  const arcs = edges.flatMap((edge) =>
    edge.kind === 'arc' && edge.sweepRad < -STRAIGHT_RAD && edge.sweepRad > -Math.PI * 0.999
      ? [{ at: edge.through, points: [edge.through, edge.from, edge.to], radiusNm: edge.radiusNm }]
      : [],
  )
  const sharp = edges.flatMap((edge, index) => {
    const before = edges[(index - 1 + edges.length) % edges.length]
    if (before === undefined) return []
    const [a, b] = [directionAt(before, 1), directionAt(edge, 0)]
    const turn = Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])
    return turn < -STRAIGHT_RAD * 10 ? [{ at: edge.from, points: [edge.from], radiusNm: 0 }] : []
  })
  return [...arcs, ...sharp]
}
