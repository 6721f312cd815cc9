import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'
import { findMethodLimit } from '../../method-limits'

export const coverlayWeb = defineItem({
  id: 'coverlay-web',
  section: 'geometry',
  severity: 'minor',
  question: 'Are the strips of coverlay between openings wide enough?',
  titles: { meets: 'Coverlay strips are wide enough', fails: 'A coverlay strip is too narrow' },
  appliesTo: { needs: ['openings'], says: 'designs that list coverlay openings' },
  limits: ['coverlayWebMm', 'coverlayWebLaserMm', 'coverlayWebDrillMm', 'coverlayWebPunchMm'],
  sourceKeys: ['guideCapabilityTable'],
  restsOn: ['artwork', 'plan', 'features.coverlayOpenings'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.coverlayOpenings[].webMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'coverlayOpenings',
      field: 'webMm',
      what: (name) => `coverlay strip beside ${name}`,
      read: (opening) => opening.webMm,
      findUnknown: ({ method, name, webMm }) =>
        method === null && webMm !== null ? { field: 'method', label: `how ${name} is made` } : null,
      limit: ({ method }) => ({ limit: findMethodLimit(context, 'coverlayWeb', method) }),
      equation: 'narrowest strip as drawn',
    }),
})
