import type { Candidate, Family, Subject } from '../subject'
import { describeGap, findRadiusThatMeets, type MeetingRadius, roundDownRadiusMm, withRadius } from './radius'
import { editArc, measureRoom, measureStraightMm, moveToMiddle, type ZoneRoom } from './room'

const CAUTIONS = [
  'Check that the assembly has room for the radius, and that something holds it.',
  'Its arc takes film from either side: measure again how far holes, openings and components lie from the bend.',
]

/** The radius at which the bend meets; where its arc and the straight film beside it are too long for the zone, the largest radius that the zone holds too. */
export const largerRadius: Family = (subject) => {
  const { zone } = subject
  const meeting = findRadiusThatMeets(subject)
  if (meeting === null) return []
  const room = measureRoom(meeting.after, zone.id)
  const candidate = describeRadius(subject, 'meets', meeting)
  if (room === null || room.arcsMm + 2 * measureStraightMm(subject) <= room.lengthMm) return [candidate]
  return [candidate, ...fitRadius(subject, meeting, room)]
}

/** The largest radius whose arc the zone holds with straight film on either side. Each mm of radius takes the angle's share of a mm of arc. */
function fitRadius(subject: Subject, meeting: MeetingRadius, { arcsMm, lengthMm }: ZoneRoom): readonly Candidate[] {
  const { design, bend, assessment, assess } = subject
  const tooLongMm = arcsMm + 2 * measureStraightMm(subject) - lengthMm
  const largestMm = meeting.insideRadiusMm - tooLongMm / ((bend.angleDeg * Math.PI) / 180)
  const insideRadiusMm = largestMm > 0 ? roundDownRadiusMm(largestMm) : 0
  if (insideRadiusMm <= bend.insideRadiusMm) return []
  const after = assess(editArc(design, bend, withRadius(bend, insideRadiusMm, assessment.result.leaves[0])))
  return after === null ? [] : [describeRadius(subject, 'fits', { insideRadiusMm, after })]
}

function describeRadius(subject: Subject, kind: 'meets' | 'fits', { insideRadiusMm, after }: MeetingRadius): Candidate {
  const { bend, zone } = subject
  const gap = describeGap(
    bend,
    after.design.bends.find(({ id }) => id === bend.id),
  )
  const inMiddle = moveToMiddle(after, subject)
  return {
    id: `larger-radius:${kind}`,
    family: 'larger-radius',
    title: kind === 'meets' ? 'Larger radius' : 'Largest radius that the zone holds',
    detail: `${bend.name}: inside radius ${bend.insideRadiusMm} mm to ${insideRadiusMm} mm${gap}${
      kind === 'meets' ? '' : `, which ${zone.name} has just length for, with straight film on either side`
    }${inMiddle === null ? '' : `; bend moved to the middle of ${zone.name}`}`,
    cautions: CAUTIONS,
    forbiddenBy: [],
    edited: inMiddle ?? after.design,
    touches: ['radius'],
  }
}
