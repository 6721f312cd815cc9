import { checkObserved, ROUTING_PLACE } from '../../checks'
import { defineItem } from '../../define-item'

export const conductorSpacing = defineItem({
  id: 'conductor-spacing',
  section: 'geometry',
  severity: 'minor',
  question: 'Are conductors evenly spaced and alike in width where they bend?',
  titles: { meets: 'Conductors are evenly spaced in bends', fails: 'Conductors are unevenly spaced in a bend' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['guideCircuitConstruction'],
  restsOn: ['features.routing.evenlySpacedInBends'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.routing.evenlySpacedInBends', worse: 'no' }],
  check: ({ design }) => [
    checkObserved({
      observed: design.features.routing.evenlySpacedInBends,
      wanted: true,
      path: ['features', 'routing', 'evenlySpacedInBends'],
      label: 'whether conductors are evenly spaced in bends',
      whenRight: 'Spacing is even across every bend.',
      whenWrong: 'Spacing is uneven across a bend.',
      places: [ROUTING_PLACE],
      sourceKey: 'guideCircuitConstruction',
    }),
  ],
})
