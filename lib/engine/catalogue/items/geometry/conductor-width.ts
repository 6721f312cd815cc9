import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const conductorWidth = defineItem({
  id: 'conductor-width',
  section: 'geometry',
  severity: 'major',
  question: 'Is every conductor wide enough to etch well?',
  titles: { meets: 'Conductors are wide enough', fails: 'A conductor is too narrow' },
  appliesTo: { needs: ['conductors'], says: 'designs that list conductors' },
  limits: ['conductorWidthMm'],
  sourceKeys: [],
  restsOn: ['features.conductors', 'construction.layers'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.conductors[].widthMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'conductors',
      field: 'widthMm',
      what: (name) => `width of ${name}`,
      read: (conductor) => conductor.widthMm,
      limit: context.getLimit('conductorWidthMm'),
      equation: 'width as drawn',
    }),
})
