import type { EvaluationContext } from '../context'
import type { Outcome, Place } from '../results'
import { placeOf } from './checks'
import { notApplicable, notComputed } from './decide'

type Hole = EvaluationContext['design']['features']['holes'][number]

/** Where a hole lies to the stiffeners: its zone holds one, it may lie beside one, or it certainly does neither. */
type StiffenerNearness = 'through' | 'beside' | 'none'

/** Checks each hole by how it lies to stiffeners; a hole whose zone nobody stated is not computed. */
export function checkStiffenedHoles(
  { design }: EvaluationContext,
  check: (hole: Hole, index: number, nearness: StiffenerNearness, places: readonly Place[]) => Outcome,
): Outcome[] {
  const stiffeners = new Set(design.construction.layers.filter(({ kind }) => kind === 'stiffener').map(({ id }) => id))
  return design.features.holes.map((hole, index) => {
    const places = [placeOf('hole', hole)]
    const zone = design.construction.zones.find(({ id }) => id === hole.zoneId)
    if (zone === undefined) {
      return notComputed(['features', 'holes', index, 'zoneId'], `zone of ${hole.name}`, places, 'typed')
    }
    const isThrough = zone.presence.some(({ layerId }) => stiffeners.has(layerId))
    // The board itself holds a hole of a rigid zone still, whatever lies beyond its edge.
    const nearness = isThrough ? 'through' : zone.kind === 'rigid' ? 'none' : 'beside'
    if (nearness === 'none') return notApplicable(`${hole.name} lies in a rigid zone without a stiffener`, places)
    return check(hole, index, nearness, places)
  })
}
