import type { EvaluationContext } from '../context'
import type { ConductorFeature } from '../design'
import type { ZoneResult } from '../results'

export interface LineZone {
  readonly zone: ZoneResult
  /** It crosses a bend there, or has copper nowhere else. */
  readonly runsThere: boolean
}

/**
 * Zones in which a line's layer has copper. Those that it may run through count where its reference has copper too: where the reference ends is
 * the question of `return-path`.
 */
export function listLineZones({ design, zones }: EvaluationContext, conductor: ConductorFeature): LineZone[] {
  const crossed = new Set(
    conductor.crossings.map(({ bendId }) => design.bends.find(({ id }) => id === bendId)?.zoneId ?? ''),
  )
  const has = ({ layers }: ZoneResult, id: string | null) =>
    layers.some(({ layerId, coverageFraction }) => layerId === id && (coverageFraction ?? 0) > 0)
  const found = zones.filter((zone) => has(zone, conductor.layerId))
  return found
    .map((zone) => ({ zone, runsThere: crossed.has(zone.zoneId) || found.length === 1 }))
    .filter(({ zone, runsThere }) => runsThere || has(zone, conductor.impedance.referenceLayerId))
}
