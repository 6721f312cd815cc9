import type { EvaluationContext } from '../../../context'
import type { Outcome } from '../../../results'
import { whileClassIsOpen } from '../../by-class'
import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'
import { readListState } from '../../listed'

const COMMON = {
  section: 'geometry',
  titles: {
    meets: 'Strips beside rigid edges hold no hole and no component',
    fails: 'A hole or a component lies in the strip beside a rigid edge',
  },
  limits: ['transitionStripMm'],
  sourceKeys: ['guideTransitionZone', 'ipc2223Recalled'],
  restsOn: [
    'artwork',
    'plan',
    'features.holes',
    'features.components',
    'features.none',
    'construction.zones.*.kind',
    'brief.performanceClass',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'features.holes[].transitionDistanceMm', worse: 'smaller' },
    { path: 'features.components[].transitionDistanceMm', worse: 'smaller' },
  ],
} as const

const check = (context: EvaluationContext): Outcome[] => [
  ...checkList(context, 'holes'),
  ...checkList(context, 'components'),
]

export const transitionStrip = defineItem({
  ...COMMON,
  id: 'transition-strip',
  severity: 'major',
  question: 'Is the strip on either side of each rigid edge free of holes and components?',
  appliesTo: { needs: ['transitions', 'below-class-three'], says: 'parts with a rigid-to-flex transition' },
  check,
})

export const transitionStripClassThree = defineItem({
  ...COMMON,
  id: 'transition-strip-class-three',
  severity: 'blocking',
  question: 'Is the strip on either side of each rigid edge free of holes and components, in a part of class 3?',
  appliesTo: { needs: ['transitions', 'class-three'], says: 'parts of class 3 with a rigid-to-flex transition' },
  check: (context) => [...whileClassIsOpen(context), ...check(context)],
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
