import type { BendAssessment } from '../assess'

export interface ZoneRoom {
  /** Arcs of all bends of the zone one after the other, each at its longest leaf and largest radius. */
  readonly arcsMm: number
  /** Null where nobody stated it. */
  readonly lengthMm: number | null
}

/** What the arcs of a zone's bends take of its length, as the item on room decides it. */
export function measureRoom({ design, assembly }: BendAssessment, zoneId: string): ZoneRoom {
  const zone = design.construction.zones.find(({ id }) => id === zoneId)
  let arcsMm = 0
  design.bends.forEach((bend, at) => {
    if (bend.zoneId !== zoneId) return
    const leaves = assembly.bends[at]?.leaves ?? []
    arcsMm += Math.max(0, ...leaves.map(({ developedLengthMm }) => developedLengthMm))
    arcsMm += bend.radiusToleranceMm * toRadians(bend.angleDeg)
  })
  return { arcsMm, lengthMm: zone?.lengthMm ?? null }
}

export function toRadians(deg: number): number {
  return (deg * Math.PI) / 180
}
