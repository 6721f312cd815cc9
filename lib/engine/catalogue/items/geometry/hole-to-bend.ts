import { checkDistanceToBend } from '../../checks'
import { defineItem } from '../../define-item'

export const holeToBend = defineItem({
  id: 'hole-to-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Are holes kept clear of bends?',
  titles: { meets: 'Holes are clear of every bend', fails: 'A hole lies in or too near a bend' },
  appliesTo: { needs: ['bends', 'holes'], says: 'designs with a bend and a hole' },
  limits: ['holeToBendMm'],
  sourceKeys: [],
  restsOn: ['artwork', 'plan', 'features.holes', 'bends'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.holes[].nearestBend.distanceMm', worse: 'smaller' }],
  check: (context) => checkDistanceToBend(context, { list: 'holes', limit: context.getLimit('holeToBendMm') }),
})
