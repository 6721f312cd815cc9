import { checkDistanceToBend } from '../../checks'
import { defineItem } from '../../define-item'

export const stiffenerToBend = defineItem({
  id: 'stiffener-to-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Do stiffeners end well before a bend?',
  why: 'At the end of a stiffener the film goes from rigid to flexible in no length at all; a bend that starts there becomes a crease.',
  howToCheck: 'From the edge of each stiffener to the start of the nearest bend.',
  titles: { meets: 'Stiffeners end clear of every bend', fails: 'A stiffener ends in or too near a bend' },
  appliesTo: { needs: ['bends', 'stiffeners'], says: 'designs with a bend and a stiffener' },
  limits: ['stiffenerToBendMm'],
  sourceKeys: [],
  decidedWhen: 'early',
  answeredBy: ['member'],
  check: (context) =>
    checkDistanceToBend(context, { list: 'stiffeners', limit: context.getLimit('stiffenerToBendMm') }),
})
