import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { makeWidthLimits } from '../../width-for-copper'

export const conductorSpace = defineItem({
  id: 'conductor-space',
  section: 'geometry',
  severity: 'major',
  question: 'Is there enough space between conductors for their copper?',
  titles: { meets: 'Conductors are far enough apart', fails: 'Conductors are too close together' },
  appliesTo: { needs: ['conductors'], says: 'designs that list conductors' },
  limits: ['conductorSpaceMm'],
  sourceKeys: ['ownChoice'],
  restsOn: ['artwork', 'features.conductors', ...SECTION_INPUTS],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.conductors[].spaceMm', worse: 'smaller' }],
  check: (context) => {
    const inForce = context.getLimit('conductorSpaceMm')
    const limitOf = makeWidthLimits(context, inForce, 'conductorSpaceByCopperMm')
    return checkDimension(context, {
      list: 'conductors',
      field: 'spaceMm',
      what: (name) => `space beside ${name}`,
      read: (conductor) => conductor.spaceMm,
      findUnknown: ({ layerId, name }) =>
        limitOf(layerId) === null ? { field: 'layerId', label: `a layer with copper under ${name}` } : null,
      limit: ({ layerId }) => limitOf(layerId) ?? { limit: inForce },
      equation: 'space as drawn; least by finished copper, or the limit in force where that is larger',
    })
  },
})
