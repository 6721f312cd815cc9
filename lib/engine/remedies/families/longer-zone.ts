import { asComputed } from '../../units'
import { editZone } from '../edits'
import type { Family } from '../subject'
import { measureRoom } from './room'

/** Length for arcs that the zone is too short for, such as those of a larger radius. */
export const longerZone: Family = ({ design, zone, assessment }) => {
  const room = measureRoom(assessment, zone.id)
  if (room === null || room.arcsMm <= room.lengthMm) return []
  const { arcsMm, lengthMm } = room
  const longerMm = Math.ceil(arcsMm)
  return [
    {
      id: `longer-zone:${longerMm}`,
      family: 'longer-zone',
      title: 'Longer flex zone',
      detail: `${zone.name}: ${lengthMm} mm to ${longerMm} mm long, for ${asComputed(arcsMm, 'developedLengthMm')} of arc`,
      cautions: [
        'The part gets longer: check the assembly, the panel and what the conductors carry over the added length.',
      ],
      forbiddenBy: [],
      edited: editZone(design, zone.id, (each) => ({ ...each, lengthMm: longerMm })),
      touches: ['zone-length'],
    },
  ]
}
