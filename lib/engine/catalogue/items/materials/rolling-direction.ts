import { defineItem } from '../../define-item'

export const rollingDirection = defineItem({
  id: 'rolling-direction',
  section: 'materials',
  severity: 'minor',
  question: 'Does the rolling direction of the foil run along the conductors through the bends?',
  why: 'Rolled foil bears bending best along its grain. On a panel the parts may be turned to save material, and then the grain runs the wrong way.',
  howToCheck: 'Put an arrow on the drawing, and ask how the fabricator turns the parts on the panel.',
  titles: { judgment: 'Somebody must settle the rolling direction' },
  appliesTo: { needs: ['bends', 'rolled-annealed-foil'], says: 'bends with rolled-annealed foil' },
  limits: [],
  sourceKeys: ['commonPractice', 'ratioTradeArticle2019'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  judgment: { evidence: 'The arrow on the drawing and the orientation on the panel.' },
})
