import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'

/** The edge of a contact end, and where its contacts lie along it. */
export interface EndMeasure {
  readonly connectorId: string
  readonly endWidthMm: number
  readonly pitchMm: number | null
  /** From the middle of an outermost contact to the end of the edge, the lesser of both sides; 0 where one lies past it. */
  readonly edgeToContactMm: number | null
}

export function measureEnds(plan: Plan): EndMeasure[] {
  return plan.connectorEnds.map(({ connectorId, fromMm, toMm, contactCount, firstContactMm, contactStepMm }) => {
    const [dx, dy] = [toMm[0] - fromMm[0], toMm[1] - fromMm[1]]
    const endWidthMm = Math.hypot(dx, dy)
    const along = (point: PointMm) => ((point[0] - fromMm[0]) * dx + (point[1] - fromMm[1]) * dy) / endWidthMm
    const pitchMm = contactStepMm === null ? null : Math.hypot(contactStepMm[0], contactStepMm[1])
    if (firstContactMm === null || contactCount === null || (contactStepMm === null && contactCount > 1)) {
      return { connectorId, endWidthMm, pitchMm, edgeToContactMm: null }
    }
    const [stepX, stepY] = contactStepMm ?? [0, 0]
    const last: PointMm = [
      firstContactMm[0] + (contactCount - 1) * stepX,
      firstContactMm[1] + (contactCount - 1) * stepY,
    ]
    const rooms = [firstContactMm, last].map((contact) => Math.min(along(contact), endWidthMm - along(contact)))
    return { connectorId, endWidthMm, pitchMm, edgeToContactMm: Math.max(0, Math.min(...rooms)) }
  })
}

/** Fewest ends of spurs that any land of a kind has. */
export function measureAnchors(plan: Plan): ReadonlyMap<string, number> {
  const fewest = new Map<string, number>()
  for (const { padId, anchorsMm } of plan.pads) {
    fewest.set(padId, Math.min(anchorsMm.length, fewest.get(padId) ?? Number.POSITIVE_INFINITY))
  }
  return fewest
}
