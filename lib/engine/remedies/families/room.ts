import type { Bend, Design } from '../../design'
import { roundTo } from '../../numerics'
import type { BendAssessment } from '../assess'
import { editBend } from '../edits'
import type { Subject } from '../subject'

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

/** Distances are stated to whole micrometres. */
const MM_DECIMALS = 3

/**
 * Straight film that has to lie on either side of a bend: as much as its edges ask for, and as the holes and components do that the design lists beside it, as if
 * each lay right at the end of the zone.
 */
export function measureStraightMm({ design, bend, getLimit }: Pick<Subject, 'design' | 'bend' | 'getLimit'>): number {
  const { holes, components } = design.features
  const isBeside = (list: typeof holes | typeof components): boolean =>
    list.some(({ nearestBend }) => nearestBend?.bendId === bend.id)
  return Math.max(
    getLimit('bendToRigidMm').value,
    isBeside(holes) ? getLimit('holeToBendMm').value : 0,
    isBeside(components) ? getLimit('componentToBendMm').value : 0,
  )
}

/** The arc of the bend grows about its axis: half of the growth is taken from the straight film on either side. */
export function editArc(design: Design, before: Bend, after: Bend): Design {
  return editBend(design, before.id, () => ({ ...after, distanceToRigidMm: findStraightLeftMm(before, after) }))
}

/** Straight film that is left beside a bend whose axis stays; null where nobody stated any. */
export function findStraightLeftMm(before: Bend, after: Bend): number | null {
  const { distanceToRigidMm } = before
  const growthMm = arcMm(after) - arcMm(before)
  if (distanceToRigidMm === null || growthMm <= 0) return distanceToRigidMm
  return Math.max(0, roundTo(distanceToRigidMm - growthMm / 2, MM_DECIMALS))
}

/**
 * The bend moved to the middle of its zone, where its arc leaves too little straight film on one side and the zone is long enough for both.
 *
 * @returns null where it may stay, or the zone is too short or has another bend
 */
export function moveToMiddle(edited: BendAssessment, { bend, zone, getLimit }: Subject): Design | null {
  const { design } = edited
  const room = measureRoom(edited, zone.id)
  const leftMm = design.bends.find(({ id }) => id === bend.id)?.distanceToRigidMm ?? null
  const straightMm = measureStraightMm({ design, bend, getLimit })
  if (room === null || leftMm === null || leftMm >= straightMm) return null
  if (room.arcsMm + 2 * straightMm > room.lengthMm) return null
  if (design.bends.filter(({ zoneId }) => zoneId === zone.id).length > 1) return null
  return editBend(design, bend.id, (each) => ({ ...each, distanceToRigidMm: straightMm }))
}

/** Along the inside face: the axis lies as far from it before as after. */
const arcMm = ({ insideRadiusMm, angleDeg }: Bend): number => (insideRadiusMm * angleDeg * Math.PI) / 180
