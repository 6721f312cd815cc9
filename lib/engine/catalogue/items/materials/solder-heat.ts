import { listStiffeners } from '../../../design'
import type { Outcome, Place } from '../../../results'
import { BRIEF_PLACE, placeOf } from '../../checks'
import { decide, makeDesignLimit, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const solderHeat = defineItem({
  id: 'solder-heat',
  section: 'materials',
  severity: 'major',
  question: 'Do coverlay, stiffeners and their bonds bear the solder profile that they meet?',
  titles: { meets: 'Films and bonds bear the solder profile', fails: 'Something does not bear the solder profile' },
  appliesTo: { needs: ['soldering'], says: 'parts that are soldered' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'brief.assembly.solderPeakDegC',
    'brief.assembly.coverlayRatingDegC',
    'brief.solderedAssembly',
    'features.stiffeners.*.bonded',
    'features.stiffeners.*.heatRatingDegC',
    'construction.layers.*.materialId',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'brief.assembly.solderPeakDegC', worse: 'larger' },
    { path: 'brief.assembly.coverlayRatingDegC', worse: 'smaller' },
    { path: 'features.stiffeners[].heatRatingDegC', worse: 'smaller' },
  ],
  check: ({ design }) => {
    const { assembly, solderedAssembly } = design.brief
    if (solderedAssembly === null) {
      return [notComputed(['brief', 'solderedAssembly'], 'whether the part is soldered', [BRIEF_PLACE], 'typed')]
    }
    const { solderPeakDegC: peak } = assembly
    if (peak === null) {
      return [
        notComputed(['brief', 'assembly', 'solderPeakDegC'], 'peak of the solder profile', [BRIEF_PLACE], 'typed'),
      ]
    }
    const hasCoverlay = design.construction.layers.some(({ kind }) => kind === 'coverlay-film')
    const cover = hasCoverlay
      ? [
          compare(peak, assembly.coverlayRatingDegC, 'the coverlay and its adhesive', BRIEF_PLACE, [
            'brief',
            'assembly',
            'coverlayRatingDegC',
          ]),
        ]
      : []
    const stiffeners = listStiffeners(design).map((stiffener, index): Outcome => {
      const place = placeOf('stiffener', stiffener)
      if (stiffener.bonded === null) {
        return notComputed(
          ['features', 'stiffeners', index, 'bonded'],
          `whether ${stiffener.name} is bonded before or after soldering`,
          [place],
          'typed',
        )
      }
      if (stiffener.bonded === 'after-soldering') {
        return notApplicable(`${stiffener.name} is bonded after soldering`, [place])
      }
      return compare(peak, stiffener.heatRatingDegC, `${stiffener.name} and its bond`, place, [
        'features',
        'stiffeners',
        index,
        'heatRatingDegC',
      ])
    })
    return [...cover, ...stiffeners]
  },
})

function compare(
  peak: number,
  rating: number | null,
  name: string,
  place: Place,
  path: readonly (string | number)[],
): Outcome {
  if (rating === null) return notComputed(path, `what ${name} bear in soldering`, [place], 'typed')
  return decide({
    value: peak,
    limit: makeDesignLimit({
      key: 'solderPeakDegC',
      value: rating,
      unit: 'degC',
      sense: 'at-most',
      sourceKey: 'commonPractice',
      name: 'rating by the maker’s sheet',
    }),
    places: [place],
    what: `peak of the solder profile at ${name}`,
    equation: 'temperatures as typed',
    cautions: ['A rating holds for a time and a number of passes: compare those too, by the maker’s sheet.'],
    isTyped: true,
  })
}
