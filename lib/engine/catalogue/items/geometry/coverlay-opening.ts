import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const coverlayOpening = defineItem({
  id: 'coverlay-opening',
  section: 'geometry',
  severity: 'minor',
  question: 'Is every coverlay opening large enough to be made?',
  titles: { meets: 'Coverlay openings are large enough', fails: 'A coverlay opening is too small' },
  appliesTo: { needs: ['openings'], says: 'designs that list coverlay openings' },
  limits: ['coverlayOpeningMm'],
  sourceKeys: [],
  restsOn: ['features.coverlayOpenings'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.coverlayOpenings[].openingMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'coverlayOpenings',
      field: 'openingMm',
      what: (name) => `size of ${name}`,
      read: (opening) => opening.openingMm,
      limit: context.getLimit('coverlayOpeningMm'),
      equation: 'smallest side as drawn',
      cautions: (opening) =>
        opening.method === null
          ? ['How the opening is made is not stated: a laser goes smaller than a drill or punch.']
          : [],
    }),
})
