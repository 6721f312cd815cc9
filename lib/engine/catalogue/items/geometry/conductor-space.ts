import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const conductorSpace = defineItem({
  id: 'conductor-space',
  section: 'geometry',
  severity: 'major',
  question: 'Is there enough space between conductors?',
  titles: { meets: 'Conductors are far enough apart', fails: 'Conductors are too close together' },
  appliesTo: { needs: ['conductors'], says: 'designs that list conductors' },
  limits: ['conductorSpaceMm'],
  sourceKeys: [],
  restsOn: ['features.conductors', 'construction.layers'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.conductors[].spaceMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'conductors',
      field: 'spaceMm',
      what: (name) => `space beside ${name}`,
      read: (conductor) => conductor.spaceMm,
      limit: context.getLimit('conductorSpaceMm'),
      equation: 'space as drawn',
    }),
})
