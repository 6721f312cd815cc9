import { checkObserved, ROUTING_PLACE } from '../../checks'
import { defineItem } from '../../define-item'

export const coverlayEdgeInBend = defineItem({
  id: 'coverlay-edge-in-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Do coverlay edges, plating ends and finish ends stay out of the bends?',
  titles: { meets: 'No edge lies inside a bend', fails: 'An edge of coverlay, plating or finish lies inside a bend' },
  appliesTo: { needs: ['bends', 'coverlay'], says: 'designs with a bend and coverlay' },
  limits: [],
  sourceKeys: ['guideCircuitConstruction'],
  restsOn: [
    'artwork',
    'plan',
    'features.routing.coverlayEdgeInsideBend',
    'construction.layers',
    'construction.zones',
    'bends',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.routing.coverlayEdgeInsideBend', worse: 'yes' }],
  check: ({ design }) => [
    checkObserved({
      observed: design.features.routing.coverlayEdgeInsideBend,
      wanted: false,
      path: ['features', 'routing', 'coverlayEdgeInsideBend'],
      label: 'whether a coverlay edge lies inside a bend',
      whenRight: 'No edge lies inside a bend.',
      whenWrong: 'An edge lies inside a bend.',
      places: [ROUTING_PLACE],
      sourceKey: 'guideCircuitConstruction',
    }),
  ],
})
