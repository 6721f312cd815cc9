import { DELIVERED_TEMPLATE } from '@/lib/engine/catalogue'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'
import type { RemedyOrder } from './orders'

/** So tight that no change alone helps: the search goes on to sets of several, as it does where people need it. */
const TIGHT_RADIUS_MM = 0.8
const MANY_CYCLES = 200_000

/** A search like those that people ask for, on a plain two-layer part whose bend moves. */
export function makeRemedyRehearsal(): RemedyOrder {
  const construction = findStartingConstruction('double-sided')
  if (construction === null) throw new RangeError('the double-sided starting construction is gone')
  const plain = construction.makeDesign('Rehearsal')
  const bends = plain.bends.map((bend) => ({
    ...bend,
    use: 'dynamic' as const,
    insideRadiusMm: TIGHT_RADIUS_MM,
    requiredCycles: MANY_CYCLES,
  }))
  return {
    design: { ...plain, bends },
    bendId: bends[0]?.id ?? '',
    isRadiusFixed: false,
    limits: [],
    testedLives: [],
    facts: {},
    template: DELIVERED_TEMPLATE,
    basis: null,
    today: '2026-01-01',
  }
}
