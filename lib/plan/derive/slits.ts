import { edgesOfPath, locateInRegion } from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'
import { pathInNm, toMm } from '../document/to-geometry'
import { areasOf } from '../topology/areas'

/** The ends of a slit that lie within the part, where the film can tear on. */
export interface SlitMeasure {
  /** Of the features; null where it draws none. */
  readonly slitId: string | null
  readonly lineId: string
  /** Least relief of the closed ends; null where one of them is not known. Absent ends (open at the outline) need none. */
  readonly reliefDiameterMm: number | null
  readonly closedEnds: number
}

/** An end of a slit within the part. */
export interface ClosedEnd {
  readonly atMm: PointMm
  /** 0 ends square; null where not known. */
  readonly reliefDiameterMm: number | null
}

export function measureSlits(plan: Plan): SlitMeasure[] {
  if (areasOf(plan).part === null) return []
  return plan.slits.map((slit) => {
    const closed = closedEndsOf(plan, slit)
    const known = closed.flatMap(({ reliefDiameterMm }) => reliefDiameterMm ?? [])
    return {
      slitId: slit.slitId,
      lineId: slit.id,
      reliefDiameterMm: known.length === closed.length && closed.length > 0 ? Math.min(...known) : null,
      closedEnds: closed.length,
    }
  })
}

/** The ends of a drawn slit at which the film goes on: start, then end. */
export function closedEndsOf(
  plan: Plan,
  { nodes, startReliefDiameterMm, endReliefDiameterMm }: Plan['slits'][number],
): ClosedEnd[] {
  const { part } = areasOf(plan)
  const edges = edgesOfPath(pathInNm(nodes))
  return [
    { at: edges[0]?.from, reliefDiameterMm: startReliefDiameterMm },
    { at: edges.at(-1)?.to, reliefDiameterMm: endReliefDiameterMm },
  ].flatMap(({ at, reliefDiameterMm }): ClosedEnd[] =>
    part !== null && at !== undefined && locateInRegion(part, at) === 'inside'
      ? [{ atMm: toMm(at), reliefDiameterMm }]
      : [],
  )
}
