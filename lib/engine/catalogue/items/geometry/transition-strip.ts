import type { EvaluationContext } from '../../../context'
import type { Outcome } from '../../../results'
import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'
import { readListState } from '../../listed'

export const transitionStrip = defineItem({
  id: 'transition-strip',
  section: 'geometry',
  severity: 'major',
  question: 'Is the strip on either side of each rigid edge free of holes and components?',
  titles: {
    meets: 'The strips beside rigid edges are free',
    fails: 'A hole or a component lies in the strip beside a rigid edge',
  },
  appliesTo: { needs: ['transitions'], says: 'parts with a rigid-to-flex transition' },
  limits: ['transitionStripMm'],
  sourceKeys: ['guideTransitionZone', 'ipc2223Recalled'],
  restsOn: ['plan', 'features.holes', 'features.components', 'features.none', 'construction.zones.*.kind'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'features.holes[].transitionDistanceMm', worse: 'smaller' },
    { path: 'features.components[].transitionDistanceMm', worse: 'smaller' },
  ],
  check: (context) => [...checkList(context, 'holes'), ...checkList(context, 'components')],
})

/** An empty list that nobody marked as empty is asked for: what may lie in the strip is not known then. */
function checkList(context: EvaluationContext, list: 'holes' | 'components'): Outcome[] {
  const state = readListState(list, context)
  if (state === 'none') return []
  if (state !== 'filled') {
    const { missing, because } = state
    return [
      { kind: 'not-computed', missing: [missing], places: [], summary: `Not computed: ${because}.`, rests: 'typed' },
    ]
  }
  return checkDimension(context, {
    list,
    field: 'transitionDistanceMm',
    what: (name) => `distance of ${name} from the transition`,
    read: (feature) => feature.transitionDistanceMm,
    limit: context.getLimit('transitionStripMm'),
    equation: 'distance as drawn',
  })
}
