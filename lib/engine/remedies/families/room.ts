import type { BendAssessment } from '../assess'

export interface ZoneRoom {
  /** Arcs of all bends of the zone one after the other, each at its longest leaf and largest radius. */
  readonly arcsMm: number
  readonly lengthMm: number
}

/** What the arcs of a zone's bends take of its length, as the catalogue's item decides it; null where it cannot. */
export function measureRoom({ check }: BendAssessment, zoneId: string): ZoneRoom | null {
  for (const outcome of check('bend-fit')) {
    const [place] = outcome.places
    if (outcome.kind !== 'decided' || outcome.limit.key !== 'zoneLengthMm' || place?.id !== zoneId) continue
    return { arcsMm: outcome.range?.high ?? outcome.value.value, lengthMm: outcome.limit.value }
  }
  return null
}
