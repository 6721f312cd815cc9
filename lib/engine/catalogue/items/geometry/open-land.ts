import { placeOf } from '../../checks'
import { decide, makeDesignLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

/** Adhesive that comes out into an opening, per edge. Fabricator guides allow up to this much: common practice, no published source. */
const COVERLAY_SQUEEZE_OUT_MM = 0.1

/**
 * Width of land that stays open, in mm: land and opening share a middle; adhesive comes in by `squeeze` from both edges of the opening, and the
 * coverlay lies `shift` to one side. Exact for straight edges.
 *
 * @example openWidthMm(1, 1.4, 0.1, 0.3) is 0.8: the land is wide enough to shift under
 */
export function openWidthMm(openingMm: number, landMm: number, squeezeMm: number, shiftMm: number): number {
  const halfOpening = openingMm / 2 - squeezeMm
  const high = Math.min(landMm / 2, halfOpening + shiftMm)
  const low = Math.max(-landMm / 2, shiftMm - halfOpening)
  return Math.max(0, high - low)
}

export const openLand = defineItem({
  id: 'open-land',
  section: 'geometry',
  severity: 'major',
  question: 'Does each coverlay opening leave enough open land after squeeze-out and shift?',
  titles: { meets: 'Openings leave enough land', fails: 'An opening leaves too little land' },
  appliesTo: { needs: ['openings'], says: 'designs that list coverlay openings' },
  limits: [],
  sourceKeys: ['exactArithmetic', 'commonPractice'],
  restsOn: [
    'features.coverlayOpenings.*.openingMm',
    'features.coverlayOpenings.*.landMm',
    'features.coverlayOpenings.*.neededOpenMm',
    'brief.tolerances.coverlayMm',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'features.coverlayOpenings[].openingMm', worse: 'smaller' },
    { path: 'features.coverlayOpenings[].landMm', worse: 'smaller' },
    { path: 'features.coverlayOpenings[].neededOpenMm', worse: 'larger' },
    { path: 'brief.tolerances.coverlayMm', worse: 'larger' },
  ],
  check: (context) => {
    const shiftMm = context.design.brief.tolerances.coverlayMm
    return context.design.features.coverlayOpenings.map((opening, index) => {
      const places = [placeOf('coverlay-opening', opening)]
      const { openingMm, landMm, neededOpenMm } = opening
      const missing = (field: string, label: string) =>
        notComputed(['features', 'coverlayOpenings', index, field], `${label} ${opening.name}`, places, 'typed')
      if (openingMm === null) return missing('openingMm', 'size of')
      if (landMm === null) return missing('landMm', 'copper under')
      if (neededOpenMm === null) return missing('neededOpenMm', 'what must stay open in')
      if (shiftMm === null) {
        return notComputed(['brief', 'tolerances', 'coverlayMm'], 'tolerance of the coverlay position', places, 'typed')
      }
      const centred = openWidthMm(openingMm, landMm, COVERLAY_SQUEEZE_OUT_MM, 0)
      return decide({
        value: centred,
        range: { low: openWidthMm(openingMm, landMm, COVERLAY_SQUEEZE_OUT_MM, shiftMm), high: centred },
        limit: makeDesignLimit({
          key: 'neededOpenMm',
          value: neededOpenMm,
          unit: 'mm',
          sense: 'at-least',
          sourceKey: 'exactArithmetic',
          name: `what must stay open in ${opening.name}`,
        }),
        places,
        what: `open land in ${opening.name}`,
        equation:
          'overlap of land and opening, less 0.1 mm of squeeze-out from both edges, over the tolerance of the coverlay',
        isTyped: true,
      })
    })
  },
})
