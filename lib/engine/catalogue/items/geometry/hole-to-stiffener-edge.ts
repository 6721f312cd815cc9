import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { checkStiffenedHoles } from '../../stiffened-holes'

export const holeToStiffenerEdge = defineItem({
  id: 'hole-to-stiffener-edge',
  section: 'geometry',
  severity: 'major',
  question: 'Are holes clear of the edges of stiffeners?',
  titles: { meets: 'Holes are clear of stiffener edges', fails: 'A hole lies too near the edge of a stiffener' },
  appliesTo: { needs: ['stiffeners', 'holes'], says: 'designs with a stiffener and holes' },
  limits: ['holeToStiffenerEdgeMm'],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'artwork',
    'plan',
    'features.holes.*.stiffenerEdgeDistanceMm',
    'features.holes.*.zoneId',
    'construction.zones.*.kind',
    'construction.zones.*.presence',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [{ path: 'features.holes[].stiffenerEdgeDistanceMm', worse: 'smaller' }],
  check: (context) =>
    checkStiffenedHoles(context, (hole, index, _, places) =>
      hole.stiffenerEdgeDistanceMm === null
        ? notComputed(
            ['features', 'holes', index, 'stiffenerEdgeDistanceMm'],
            `distance of ${hole.name} from the edge of a stiffener`,
            places,
            'typed',
          )
        : decide({
            value: hole.stiffenerEdgeDistanceMm,
            limit: context.getLimit('holeToStiffenerEdgeMm'),
            places,
            what: `${hole.name} to the edge of a stiffener`,
            equation: 'distance as typed',
            isTyped: true,
          }),
    ),
})
