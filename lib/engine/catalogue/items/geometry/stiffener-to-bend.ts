import { checkDistanceToBend } from '../../checks'
import { defineItem } from '../../define-item'

export const stiffenerToBend = defineItem({
  id: 'stiffener-to-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Do stiffeners end well before a bend?',
  titles: { meets: 'Stiffeners end clear of every bend', fails: 'A stiffener ends in or too near a bend' },
  appliesTo: { needs: ['bends', 'stiffeners'], says: 'designs with a bend and a stiffener' },
  limits: ['stiffenerToBendMm'],
  sourceKeys: [],
  restsOn: ['features.stiffeners', 'bends'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.stiffeners[].nearestBend.distanceMm', worse: 'smaller' }],
  check: (context) =>
    checkDistanceToBend(context, { list: 'stiffeners', limit: context.getLimit('stiffenerToBendMm') }),
})
