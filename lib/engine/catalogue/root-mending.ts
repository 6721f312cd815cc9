import type { EvaluationContext } from '../context'
import type { Design, Zone } from '../design'
import type { Outcome } from '../results'
import { listConductorLayers } from './needs'

/*
 * The design with one cause gone, to see what goes with it. It is never shown: nobody is told to build it.
 */

/** No conductor layer that the outcomes name is plated in the zones of their bends. */
export function leavePlatingOut({ design }: EvaluationContext, failed: readonly Outcome[]): readonly Design[] {
  const zoneIds = listZonesOf(design, failed)
  const layerIds = new Set(
    failed.flatMap(({ places }) => places.flatMap(({ kind, id }) => (kind === 'layer' ? [id] : []))),
  )
  return [
    withZones(design, zoneIds, (zone) => ({
      ...zone,
      presence: zone.presence.map((each) => (layerIds.has(each.layerId) ? { ...each, platedCopper: 'none' } : each)),
    })),
  ]
}

/** As many conductor layers as the limit lets, next to each other: one design for each way to choose them. */
export function keepFewConductorLayers(context: EvaluationContext, failed: readonly Outcome[]): readonly Design[] {
  const { design } = context
  const count = Math.min(...failed.map((outcome) => (outcome.kind === 'decided' ? outcome.limit.value : 0)))
  const zoneIds = listZonesOf(design, failed)
  const most = Math.max(0, ...[...zoneIds].map((id) => listConductorLayers(context.findZoneResult(id)).length))
  if (count < 1) return []
  return Array.from({ length: Math.max(0, most - count + 1) }, (_, start) =>
    withZones(design, zoneIds, (zone) => {
      const layers = listConductorLayers(context.findZoneResult(zone.id))
      const removed = new Set(
        layers.filter((_layer, at) => at < start || at >= start + count).map((layer) => layer.layerId),
      )
      return { ...zone, presence: zone.presence.filter(({ layerId }) => !removed.has(layerId)) }
    }),
  )
}

/** As much copper on the walls of the holes that the outcomes name as their limit asks for. */
export function plateWalls({ design }: EvaluationContext, failed: readonly Outcome[]): readonly Design[] {
  const least = Math.max(0, ...failed.map((outcome) => (outcome.kind === 'decided' ? outcome.limit.value : 0)))
  const ids = new Set(failed.flatMap(({ places }) => places.flatMap(({ kind, id }) => (kind === 'hole' ? [id] : []))))
  const holes = design.features.holes.map((hole) => (ids.has(hole.id) ? { ...hole, wallPlatingUm: least } : hole))
  return [{ ...design, features: { ...design.features, holes } }]
}

function listZonesOf({ bends }: Design, failed: readonly Outcome[]): ReadonlySet<string> {
  const bendIds = new Set(
    failed.flatMap(({ places }) => places.flatMap(({ kind, id }) => (kind === 'bend' ? [id] : []))),
  )
  return new Set(bends.flatMap(({ id, zoneId }) => (bendIds.has(id) && zoneId !== null ? [zoneId] : [])))
}

function withZones(design: Design, zoneIds: ReadonlySet<string>, change: (zone: Zone) => Zone): Design {
  const zones = design.construction.zones.map((zone) => (zoneIds.has(zone.id) ? change(zone) : zone))
  return { ...design, construction: { ...design.construction, zones } }
}
