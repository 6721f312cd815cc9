import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const holeToTransition = defineItem({
  id: 'hole-to-transition',
  section: 'geometry',
  severity: 'major',
  question: 'Are holes kept away from the rigid-to-flex transition?',
  titles: { meets: 'Holes are clear of the transition', fails: 'A hole lies too near the transition' },
  appliesTo: { needs: ['transitions', 'holes'], says: 'parts with a rigid-to-flex transition and a hole' },
  limits: ['holeToTransitionMm'],
  sourceKeys: ['guideTransitionZone', 'ipc2223Recalled'],
  restsOn: ['features.holes', 'construction.zones.*.kind'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.holes[].transitionDistanceMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'holes',
      field: 'transitionDistanceMm',
      what: (name) => `distance of ${name} from the transition`,
      read: (feature) => feature.transitionDistanceMm,
      limit: context.getLimit('holeToTransitionMm'),
      equation: 'distance as drawn',
    }),
})
