import { editBend } from '../edits'
import type { Candidate, Family, Subject } from '../subject'
import { describeGap, findRadiusThatMeets, type MeetingRadius, roundDownRadiusMm, withRadius } from './radius'
import { measureRoom, type ZoneRoom } from './room'

/** The radius at which the bend meets; where its arc is too long for the zone, the largest radius that the zone holds too. */
export const largerRadius: Family = (subject) => {
  const { bend, zone } = subject
  const meeting = findRadiusThatMeets(subject)
  if (meeting === null) return []
  const room = measureRoom(meeting.after, zone.id)
  const candidate: Candidate = {
    id: 'larger-radius:meets',
    family: 'larger-radius',
    title: 'Larger radius',
    detail: `${bend.name}: inside radius ${bend.insideRadiusMm} mm to ${meeting.insideRadiusMm} mm${describeGap(
      bend,
      meeting.after.design.bends.find(({ id }) => id === bend.id),
    )}`,
    cautions: ['Check that the assembly has room for the radius, and that something holds it.'],
    forbiddenBy: [],
    edited: meeting.after.design,
    touches: ['radius'],
  }
  if (room === null || room.arcsMm <= room.lengthMm) return [candidate]
  return [candidate, ...fitRadius(subject, meeting, room)]
}

/** The largest radius whose arc the zone holds. Each mm of radius takes the angle's share of a mm of arc. */
function fitRadius(
  { design, bend, zone, assessment: { result } }: Subject,
  meeting: MeetingRadius,
  { arcsMm, lengthMm }: ZoneRoom,
): readonly Candidate[] {
  const largestMm = meeting.insideRadiusMm - (arcsMm - lengthMm) / ((bend.angleDeg * Math.PI) / 180)
  const insideRadiusMm = largestMm > 0 ? roundDownRadiusMm(largestMm) : 0
  if (insideRadiusMm <= bend.insideRadiusMm) return []
  const fitted = withRadius(bend, insideRadiusMm, result.leaves[0])
  return [
    {
      id: 'larger-radius:fits',
      family: 'larger-radius',
      title: 'Largest radius that the zone holds',
      detail: `${bend.name}: inside radius ${bend.insideRadiusMm} mm to ${insideRadiusMm} mm${describeGap(bend, fitted)}, which ${zone.name} has just length for`,
      cautions: ['Check that the assembly has room for the radius, and that something holds it.'],
      forbiddenBy: [],
      edited: editBend(design, bend.id, () => fitted),
      touches: ['radius'],
    },
  ]
}
