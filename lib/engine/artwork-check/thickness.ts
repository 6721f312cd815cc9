import { DESIGN_PLACE, placeOf } from '../results'
import { asEntered, inSentence } from '../units'
import type { ArtworkPair, ArtworkSubject, Comparison } from './compared'

/** Thicknesses in such files are nominal, and the trade orders to ±10 %: common practice, no published source. */
const AGREE_FRACTION = 0.1

const areAlike = (oneMm: number, otherMm: number): boolean =>
  Math.abs(oneMm - otherMm) <= AGREE_FRACTION * Math.max(oneMm, otherMm)

/** What job and stack files say of thickness. They know one thickness of a part, or one a stack: any zone may be the one they mean. */
export function compareThicknesses({ artwork, zones }: ArtworkSubject): Comparison {
  const ofZones = zones.map(({ name, thicknessUm }) => `${name} ${inSentence(thicknessUm, 'um')}`).join(', ')
  const againstZones = (where: string, thicknessMm: number): ArtworkPair => ({
    fact: 'Thickness',
    one: { where, says: asEntered(Math.round(thicknessMm * 1e4) / 1e4, 'mm') },
    other: { where: 'the zones of the construction', says: ofZones, path: ['construction', 'zones'] },
    agrees: zones.some(({ thicknessUm }) => areAlike(thicknessMm, thicknessUm / 1000)),
    places: zones.map(({ zoneId, name }) => placeOf('zone', { id: zoneId, name })),
  })
  if (zones.length === 0) return { pairs: [], open: [] }
  const pairs = artwork.files.flatMap(({ name, job, stackGroups }): ArtworkPair[] => [
    ...(job?.thicknessMm == null || job.thicknessMm === 0 ? [] : [againstZones(name, job.thicknessMm)]),
    ...(job?.thicknessMm == null || job.stackThicknessMm === null || job.thicknessMm === 0
      ? []
      : [
          {
            fact: 'Thickness within the job file',
            one: { where: name, says: asEntered(job.thicknessMm, 'mm') },
            other: {
              where: 'its own list of materials',
              says: asEntered(Math.round(job.stackThicknessMm * 1e4) / 1e4, 'mm'),
            },
            agrees: areAlike(job.thicknessMm, job.stackThicknessMm),
            places: [DESIGN_PLACE],
          },
        ]),
    ...(stackGroups ?? []).flatMap(({ name: group, thicknessMm }) =>
      thicknessMm === null || thicknessMm === 0 ? [] : [againstZones(`stack ${group} of ${name}`, thicknessMm)],
    ),
  ])
  return { pairs, open: [] }
}
