import { defineItem } from '../../define-item'
import { checkHandbookRule } from '../../handbook-rule'
import { SECTION_INPUTS } from '../../item-inputs'
import { TIGHTER_BEND, WIDER_TOLERANCES } from '../../monotone'
import { checkRatioRule } from '../../ratio-rule'

export const radiusRules = defineItem({
  id: 'radius-rules',
  section: 'materials',
  severity: 'minor',
  question: 'Does each inside radius keep the rules of thumb: the handbook formula, and the ratio of the chosen table?',
  titles: { meets: 'Radii keep the rules of thumb', fails: 'A radius is below a rule of thumb' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['ipc2223', 'ipc2223Recalled', 'ratioAttributedToIpc2223', 'commonPractice'],
  restsOn: [...SECTION_INPUTS, 'bends', 'brief.ratioTableKey'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [...TIGHTER_BEND, ...WIDER_TOLERANCES],
  check: (context) => [...checkHandbookRule(context), ...checkRatioRule(context)],
})
