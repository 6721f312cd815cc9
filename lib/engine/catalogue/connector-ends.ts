import type { EvaluationContext } from '../context'
import { callByName } from '../design'
import type { Outcome } from '../results'
import { placeOf } from './checks'
import { notComputed } from './decide'

/** Finger zones that no connector end is entered for: what their connectors ask is not known. */
export function findEndsWithoutRecord({ design }: EvaluationContext): Outcome[] {
  const described = new Set(design.features.connectors.map(({ zoneId }) => zoneId))
  return design.construction.zones
    .filter(({ id, kind }) => kind === 'finger' && !described.has(id))
    .map((zone) =>
      notComputed(
        ['features', 'connectors'],
        `a connector end for ${callByName('zone', zone.name)}`,
        [placeOf('zone', zone)],
        'typed',
      ),
    )
}
