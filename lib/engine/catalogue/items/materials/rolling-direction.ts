import { defineItem } from '../../define-item'
import { BEND_PLACE_INPUTS } from '../../item-inputs'

const COMMON = {
  section: 'materials',
  limits: [],
  sourceKeys: ['commonPractice', 'ratioTradeArticle2019'],
  restsOn: [
    'construction.layers.*.materialId',
    'materials',
    'features.conductors.*.crossings',
    'bends.*.use',
    ...BEND_PLACE_INPUTS,
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  judgment: { evidence: 'The arrow on the drawing and the orientation on the panel.' },
} as const

export const rollingDirection = defineItem({
  ...COMMON,
  id: 'rolling-direction',
  severity: 'minor',
  question: 'Does the rolling direction of the foil run along the conductors through the bends?',
  titles: { judgment: 'Somebody must settle the rolling direction' },
  appliesTo: {
    needs: ['bends', 'still-bends', 'rolled-annealed-foil'],
    says: 'bends that stand still, with rolled-annealed foil',
  },
})

/** The grain moves the life of a hinge: there it is worth a panel that holds fewer parts. */
export const rollingDirectionMoving = defineItem({
  ...COMMON,
  id: 'rolling-direction-moving',
  severity: 'major',
  question: 'Does the rolling direction of the foil run along the conductors through the bends that move?',
  titles: { judgment: 'Somebody must settle the rolling direction of the bends that move' },
  appliesTo: {
    needs: ['bends', 'dynamic-bends', 'rolled-annealed-foil'],
    says: 'bends that move, with rolled-annealed foil',
  },
})
