import { defineItem } from '../../define-item'
import { BEND_PLACE_INPUTS } from '../../item-inputs'

export const rollingDirection = defineItem({
  id: 'rolling-direction',
  section: 'materials',
  severity: 'minor',
  question: 'Does the rolling direction of the foil run along the conductors through the bends?',
  titles: { judgment: 'Somebody must settle the rolling direction' },
  appliesTo: { needs: ['bends', 'rolled-annealed-foil'], says: 'bends with rolled-annealed foil' },
  limits: [],
  sourceKeys: ['commonPractice', 'ratioTradeArticle2019'],
  restsOn: ['construction.layers.*.materialId', 'materials', 'features.conductors.*.crossings', ...BEND_PLACE_INPUTS],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  judgment: { evidence: 'The arrow on the drawing and the orientation on the panel.' },
})
