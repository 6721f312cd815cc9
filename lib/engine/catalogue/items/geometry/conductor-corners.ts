import { checkObserved, ROUTING_PLACE } from '../../checks'
import { defineItem } from '../../define-item'

export const conductorCorners = defineItem({
  id: 'conductor-corners',
  section: 'geometry',
  severity: 'minor',
  question: 'Do conductors turn in curves rather than corners?',
  titles: { meets: 'Conductors turn in curves', fails: 'Conductors turn in corners' },
  appliesTo: { needs: ['flex-zones', 'conductor-layers'], says: 'designs with a flex zone' },
  limits: [],
  sourceKeys: ['guideCircuitConstruction'],
  restsOn: ['features.routing.cornersCurved'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.routing.cornersCurved', worse: 'no' }],
  check: ({ design }) => [
    checkObserved({
      observed: design.features.routing.cornersCurved,
      wanted: true,
      path: ['features', 'routing', 'cornersCurved'],
      label: 'whether conductors turn in curves',
      whenRight: 'Conductors turn in curves.',
      whenWrong: 'Conductors turn in corners on flexible zones.',
      places: [ROUTING_PLACE],
      sourceKey: 'guideCircuitConstruction',
    }),
  ],
})
