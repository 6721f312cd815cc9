import { checkDimension } from '../../checks'
import { findCornerLimit } from '../../corner-limits'
import { defineItem } from '../../define-item'

export const cornerRadius = defineItem({
  id: 'corner-radius',
  section: 'geometry',
  severity: 'major',
  question: 'Do all inside corners of the outline have a generous radius, those beside flex a larger one?',
  titles: { meets: 'Inside corners are well rounded', fails: 'An inside corner is too sharp' },
  appliesTo: { needs: ['corners'], says: 'outlines with an inside corner' },
  limits: ['cornerInsideRadiusMm', 'cornerElsewhereRadiusMm'],
  sourceKeys: [],
  restsOn: ['plan', 'features.outlineCorners', 'construction.zones'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.outlineCorners[].insideRadiusMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'outlineCorners',
      field: 'insideRadiusMm',
      what: (name) => `inside radius of ${name}`,
      read: (corner) => corner.insideRadiusMm,
      findUnknown: (corner) =>
        corner.insideRadiusMm !== null && findCornerLimit(context, corner) === null
          ? { field: 'bordersFlex', label: `whether ${corner.name} borders a flex zone` }
          : null,
      limit: (corner) => ({ limit: findCornerLimit(context, corner) ?? context.getLimit('cornerInsideRadiusMm') }),
      equation: 'radius as drawn',
    }),
})
