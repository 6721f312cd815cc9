import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const stiffenerOverlap = defineItem({
  id: 'stiffener-overlap',
  section: 'geometry',
  severity: 'major',
  question: 'Does each stiffener overlap the end of the coverlay?',
  why: 'Where both end in one line the conductors stand bare across a hinge. 30 to 50 mil of overlap is common practice, no published source.',
  howToCheck: 'How far the stiffener reaches past the end of the coverlay, on the other face.',
  titles: { meets: 'Stiffeners overlap the coverlay', fails: 'A stiffener ends where the coverlay ends, or nearly' },
  appliesTo: { needs: ['stiffeners', 'coverlay'], says: 'parts with a stiffener and coverlay' },
  limits: ['stiffenerOverlapMm'],
  sourceKeys: [],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
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
