import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const componentToTransition = defineItem({
  id: 'component-to-transition',
  section: 'geometry',
  severity: 'minor',
  question: 'Are components kept away from the rigid-to-flex transition?',
  titles: { meets: 'Components are clear of the transition', fails: 'A component lies too near the transition' },
  appliesTo: { needs: ['transitions', 'components'], says: 'parts with a rigid-to-flex transition and a component' },
  limits: ['componentToTransitionMm'],
  sourceKeys: [],
  restsOn: ['features.components', 'construction.zones.*.kind'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.components[].transitionDistanceMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'components',
      field: 'transitionDistanceMm',
      what: (name) => `distance of ${name} from the transition`,
      read: (feature) => feature.transitionDistanceMm,
      limit: context.getLimit('componentToTransitionMm'),
      equation: 'distance as drawn',
    }),
})
