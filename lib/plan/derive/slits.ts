import { edgesOfPath, locateInRegion } from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { pathInNm } from '../document/to-geometry'
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

export function measureSlits(plan: Plan): SlitMeasure[] {
  const { part } = areasOf(plan)
  if (part === null) return []
  return plan.slits.map(({ id, slitId, nodes, startReliefDiameterMm, endReliefDiameterMm }) => {
    const edges = edgesOfPath(pathInNm(nodes))
    const [start, end] = [edges[0]?.from, edges.at(-1)?.to]
    const closed = [
      { at: start, relief: startReliefDiameterMm },
      { at: end, relief: endReliefDiameterMm },
    ].filter(({ at }) => at !== undefined && locateInRegion(part, at) === 'inside')
    const known = closed.flatMap(({ relief }) => relief ?? [])
    return {
      slitId,
      lineId: id,
      reliefDiameterMm: known.length === closed.length && closed.length > 0 ? Math.min(...known) : null,
      closedEnds: closed.length,
    }
  })
}
