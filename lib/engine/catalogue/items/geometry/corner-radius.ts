import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const cornerRadius = defineItem({
  id: 'corner-radius',
  section: 'geometry',
  severity: 'major',
  question: 'Do all inside corners of the outline have a generous radius?',
  titles: { meets: 'Inside corners are well rounded', fails: 'An inside corner is too sharp' },
  appliesTo: { needs: ['corners'], says: 'outlines with an inside corner' },
  limits: ['cornerInsideRadiusMm'],
  sourceKeys: [],
  restsOn: ['features.outlineCorners'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.outlineCorners[].insideRadiusMm', worse: 'smaller' }],
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
