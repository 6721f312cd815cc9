import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const holeToTransition = defineItem({
  id: 'hole-to-transition',
  section: 'geometry',
  severity: 'major',
  question: 'Are holes kept away from the rigid-to-flex transition?',
  why: 'Adhesive of the flexible part squeezes and grows there in heat and pulls barrels apart. Guides say from 0.76 to 1.5 mm; 3.18 mm is remembered from the design standard, not read.',
  howToCheck:
    'From the edge of each hole to the edge of the rigid part; holes must not pierce coverlay that runs under it.',
  titles: { meets: 'Holes are clear of the transition', fails: 'A hole lies too near the transition' },
  appliesTo: { needs: ['transitions', 'holes'], says: 'parts with a rigid-to-flex transition and a hole' },
  limits: ['holeToTransitionMm'],
  sourceKeys: ['ipc2223Recalled'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
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
