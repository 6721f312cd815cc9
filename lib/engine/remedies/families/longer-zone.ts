import { asComputed, asEntered, inSentence } from '../../units'
import { editBend, editZone } from '../edits'
import type { Family, Subject } from '../subject'
import { lengthenConductors, type Widened } from './longer-conductors'
import { measureRoom, measureStraightMm } from './room'

/**
 * Length for arcs that the zone is too short for, such as those of a larger radius, with the straight film that has to lie on either side. The conductors
 * that run through get as much longer.
 */
export const longerZone: Family = (subject) => {
  const { bend, zone, assessment } = subject
  const room = measureRoom(assessment, zone.id)
  if (room === null || (room.arcsMm <= room.lengthMm && !lacksStraightFilm(subject))) return []
  const { arcsMm, lengthMm } = room
  const straightMm = measureStraightMm(subject)
  const longerMm = Math.ceil(arcsMm + 2 * straightMm)
  if (longerMm <= lengthMm) return []
  const { edited, widened } = lengthenConductors(subject, longerMm - lengthMm)
  const longer = editZone(edited, zone.id, (each) => ({ ...each, lengthMm: longerMm }))
  return [
    {
      id: `longer-zone:${longerMm}`,
      family: 'longer-zone',
      title: 'Longer flex zone',
      detail: [
        `${zone.name}: ${lengthMm} mm to ${longerMm} mm long, for ${asComputed(arcsMm, 'developedLengthMm')} of arc and ${inSentence(straightMm, 'mm')} of straight film at either end`,
        ...(widened.length === 0
          ? []
          : [`wider for the voltage drop over the added length: ${describeWidths(widened)}`]),
      ].join('; '),
      cautions: [
        'The part gets longer: check the assembly and the panel.',
        ...(widened.length > 0
          ? ['Wider conductors make the bend stiffer and take room: the layout has to follow.']
          : []),
        'Place the bend in the middle of the zone, and measure again what lies beside it.',
      ],
      forbiddenBy: [],
      edited: editBend(longer, bend.id, (each) => ({
        ...each,
        distanceToRigidMm: each.distanceToRigidMm === null ? null : Math.max(each.distanceToRigidMm, straightMm),
      })),
      touches: ['zone-length'],
    },
  ]
}

const describeWidths = (widened: readonly Widened[]): string =>
  widened
    .map(({ name, widthMm, widerMm }) => `${name} ${asEntered(widthMm, 'mm')} to ${asEntered(widerMm, 'mm')}`)
    .join(', ')

const lacksStraightFilm = ({ bend, assessment: { check } }: Subject): boolean =>
  check('straight-film').some(
    (outcome) =>
      outcome.kind === 'decided' &&
      outcome.verdict !== 'meets' &&
      outcome.places.some(({ kind, id }) => kind === 'bend' && id === bend.id),
  )
