import { checkDistanceToBend } from '../../checks'
import { defineItem } from '../../define-item'

export const componentToBend = defineItem({
  id: 'component-to-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Are components kept clear of bends?',
  titles: { meets: 'Components are clear of every bend', fails: 'A component lies in or too near a bend' },
  appliesTo: { needs: ['bends', 'components'], says: 'designs with a bend and a component' },
  limits: ['componentToBendMm'],
  sourceKeys: [],
  restsOn: ['plan', 'features.components', 'bends'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.components[].nearestBend.distanceMm', worse: 'smaller' }],
  check: (context) =>
    checkDistanceToBend(context, { list: 'components', limit: context.getLimit('componentToBendMm') }),
})
