import type { EvaluationContext } from '../context'
import { listConductorLayers } from './needs'

type Pad = EvaluationContext['design']['features']['pads'][number]

/**
 * What a land lies on: a rigid board holds it, film does not. By its zone; where nobody said which, by the zones that its layer runs through, if all are
 * of one kind. Null where nobody can tell, or where its layer has no copper in its zone.
 */
export function findGround(
  { design, findZoneResult }: EvaluationContext,
  { layerId, zoneId }: Pad,
): 'board' | 'film' | null {
  const zones = design.construction.zones.filter(({ id }) =>
    listConductorLayers(findZoneResult(id)).some((layer) => layer.layerId === layerId),
  )
  const kinds = new Set(
    zones.flatMap(({ id, kind }) => (zoneId === null || id === zoneId ? [kind === 'rigid' ? 'board' : 'film'] : [])),
  )
  const [only] = kinds
  return kinds.size === 1 ? (only as 'board' | 'film') : null
}
