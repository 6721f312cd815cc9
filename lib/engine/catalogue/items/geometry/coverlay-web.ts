import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const coverlayWeb = defineItem({
  id: 'coverlay-web',
  section: 'geometry',
  severity: 'minor',
  question: 'Are the strips of coverlay between openings wide enough?',
  titles: { meets: 'Coverlay strips are wide enough', fails: 'A coverlay strip is too narrow' },
  appliesTo: { needs: ['openings'], says: 'designs that list coverlay openings' },
  limits: ['coverlayWebMm'],
  sourceKeys: [],
  restsOn: ['features.coverlayOpenings'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.coverlayOpenings[].webMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'coverlayOpenings',
      field: 'webMm',
      what: (name) => `coverlay strip beside ${name}`,
      read: (opening) => opening.webMm,
      limit: context.getLimit('coverlayWebMm'),
      equation: 'narrowest strip as drawn',
    }),
})
