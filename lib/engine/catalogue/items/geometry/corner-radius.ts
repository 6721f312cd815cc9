import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const cornerRadius = defineItem({
  id: 'corner-radius',
  section: 'geometry',
  severity: 'major',
  question: 'Do all inside corners of the outline have a generous radius?',
  why: 'Film tears from a sharp inside corner, and once begun a tear runs. 30 mil is common practice; a design magazine of 2023 prints 0.75 mm.',
  howToCheck: 'Measure every inside corner of outline, notches and cut-outs.',
  titles: { meets: 'Inside corners are well rounded', fails: 'An inside corner is too sharp' },
  appliesTo: { needs: ['corners'], says: 'outlines with an inside corner' },
  limits: ['cornerInsideRadiusMm'],
  sourceKeys: [],
  decidedWhen: 'early',
  answeredBy: ['member'],
  check: (context) =>
    checkDimension(context, {
      list: 'outlineCorners',
      field: 'insideRadiusMm',
      what: (name) => `inside radius of ${name}`,
      read: (corner) => corner.insideRadiusMm,
      limit: context.getLimit('cornerInsideRadiusMm'),
      equation: 'radius as drawn',
    }),
})
