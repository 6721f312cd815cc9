import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const stiffenerOverlap = defineItem({
  id: 'stiffener-overlap',
  section: 'geometry',
  severity: 'major',
  question: 'Does each stiffener overlap the end of the coverlay?',
  titles: { meets: 'Stiffeners overlap the coverlay', fails: 'A stiffener ends where the coverlay ends, or nearly' },
  appliesTo: { needs: ['stiffeners', 'coverlay'], says: 'parts with a stiffener and coverlay' },
  limits: ['stiffenerOverlapMm'],
  sourceKeys: [],
  restsOn: ['artwork', 'plan', 'features.stiffeners'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.stiffeners[].coverlayOverlapMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'stiffeners',
      field: 'coverlayOverlapMm',
      what: (name) => `overlap of ${name} with the coverlay`,
      read: (feature) => feature.coverlayOverlapMm,
      limit: context.getLimit('stiffenerOverlapMm'),
      equation: 'overlap as drawn',
    }),
})
