import { freshId } from '../edits'
import type { Candidate, Family } from '../subject'
import { findRadiusThatMeets } from './radius'
import { editArc, measureRoom, measureStraightMm } from './room'

/**
 * The angle split over two bends, in this zone and in another flexible one: half the angle needs half the length, so that a radius fits
 * that one zone is too short for. Strain is that of the radius, whatever the angle.
 */
export const splitBend: Family = (subject) => {
  const { design, bend, zone } = subject
  const others = design.construction.zones.filter(({ id, kind }) => id !== zone.id && kind === 'flex')
  if (others.length === 0) return []
  const meeting = findRadiusThatMeets(subject)
  // Where the whole angle fits, nothing is gained.
  const room = meeting === null ? null : measureRoom(meeting.after, zone.id)
  if (meeting === null || room === null || room.arcsMm + 2 * measureStraightMm(subject) <= room.lengthMm) {
    return []
  }
  const angleDeg = bend.angleDeg / 2
  // Each half moves through half of the way too.
  const flexesFromAngleDeg = bend.flexesFromAngleDeg === null ? null : bend.flexesFromAngleDeg / 2
  const { insideRadiusMm } = meeting
  return others.map((other): Candidate => {
    const half = editArc(design, bend, { ...bend, insideRadiusMm, angleDeg, flexesFromAngleDeg })
    const axisLengthMm = Math.min(bend.axisLengthMm, other.widthMm ?? bend.axisLengthMm)
    const second = {
      ...bend,
      id: freshId(bend.id, design.bends),
      name: `${bend.name}, second half`.slice(0, 120),
      zoneId: other.id,
      insideRadiusMm,
      angleDeg,
      flexesFromAngleDeg,
      axisLengthMm,
      distanceToRigidMm: null,
    }
    return {
      id: `split-bend:${other.id}`,
      family: 'split-bend',
      title: 'Angle split over two bends',
      detail: `${bend.name}: ${bend.angleDeg}° to ${angleDeg}° in ${zone.name} and ${angleDeg}° in ${other.name}, inside radius ${bend.insideRadiusMm} mm to ${insideRadiusMm} mm`,
      cautions: ['Check that the assembly lets the part turn in two places, and that something holds both radii.'],
      forbiddenBy: [],
      edited: { ...half, bends: [...half.bends, second] },
      touches: ['radius', 'radius-tolerance', 'split-bend'],
    }
  })
}
