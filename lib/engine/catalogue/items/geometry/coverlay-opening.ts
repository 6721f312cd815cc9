import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'
import { findMethodLimit } from '../../method-limits'

export const coverlayOpening = defineItem({
  id: 'coverlay-opening',
  section: 'geometry',
  severity: 'minor',
  question: 'Is every coverlay opening large enough to be made?',
  titles: { meets: 'Coverlay openings are large enough', fails: 'A coverlay opening is too small' },
  appliesTo: { needs: ['openings'], says: 'designs that list coverlay openings' },
  limits: ['coverlayOpeningMm', 'coverlayOpeningLaserMm', 'coverlayOpeningDrillMm', 'coverlayOpeningPunchMm'],
  sourceKeys: [],
  restsOn: ['artwork', 'plan', 'features.coverlayOpenings'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.coverlayOpenings[].openingMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'coverlayOpenings',
      field: 'openingMm',
      what: (name) => `size of ${name}`,
      read: (opening) => opening.openingMm,
      findUnknown: ({ method, name, openingMm }) =>
        method === null && openingMm !== null ? { field: 'method', label: `how ${name} is made` } : null,
      limit: ({ method }) => ({ limit: findMethodLimit(context, 'coverlayOpening', method) }),
      equation: 'smallest side as drawn',
    }),
})
