import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { makeWidthLimits } from '../../width-for-copper'

export const conductorWidth = defineItem({
  id: 'conductor-width',
  section: 'geometry',
  severity: 'major',
  question: 'Is every conductor wide enough to etch well in its copper?',
  titles: { meets: 'Conductors are wide enough', fails: 'A conductor is too narrow' },
  appliesTo: { needs: ['conductors'], says: 'designs that list conductors' },
  limits: ['conductorWidthMm'],
  sourceKeys: ['ownChoice'],
  restsOn: ['artwork', 'features.conductors', ...SECTION_INPUTS],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.conductors[].widthMm', worse: 'smaller' }],
  check: (context) => {
    const inForce = context.getLimit('conductorWidthMm')
    const limitOf = makeWidthLimits(context, inForce, 'conductorWidthByCopperMm')
    return checkDimension(context, {
      list: 'conductors',
      field: 'widthMm',
      what: (name) => `width of ${name}`,
      read: (conductor) => conductor.widthMm,
      findUnknown: ({ layerId, name }) =>
        limitOf(layerId) === null ? { field: 'layerId', label: `a layer with copper under ${name}` } : null,
      limit: ({ layerId }) => limitOf(layerId) ?? { limit: inForce },
      equation: 'width as drawn; least by finished copper, or the limit in force where that is larger',
    })
  },
})
