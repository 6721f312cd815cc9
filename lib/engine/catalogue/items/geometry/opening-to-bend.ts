import { checkDistanceToBend } from '../../checks'
import { defineItem } from '../../define-item'

export const openingToBend = defineItem({
  id: 'opening-to-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Are coverlay openings kept clear of bends?',
  titles: {
    meets: 'Coverlay openings are clear of every bend',
    fails: 'A coverlay opening lies in or too near a bend',
  },
  appliesTo: { needs: ['bends', 'openings'], says: 'designs with a bend and a coverlay opening' },
  limits: ['openingToBendMm'],
  sourceKeys: [],
  restsOn: ['artwork', 'plan', 'features.coverlayOpenings', 'bends'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.coverlayOpenings[].nearestBend.distanceMm', worse: 'smaller' }],
  check: (context) =>
    checkDistanceToBend(context, { list: 'coverlayOpenings', limit: context.getLimit('openingToBendMm') }),
})
