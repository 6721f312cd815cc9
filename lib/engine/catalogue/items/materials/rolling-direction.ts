import { defineItem } from '../../define-item'

export const rollingDirection = defineItem({
  id: 'rolling-direction',
  section: 'materials',
  severity: 'minor',
  question: 'Does the rolling direction of the foil run along the conductors through the bends?',
  titles: { judgment: 'Somebody must settle the rolling direction' },
  appliesTo: { needs: ['bends', 'rolled-annealed-foil'], says: 'bends with rolled-annealed foil' },
  limits: [],
  sourceKeys: ['commonPractice', 'ratioTradeArticle2019'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  judgment: { evidence: 'The arrow on the drawing and the orientation on the panel.' },
})
