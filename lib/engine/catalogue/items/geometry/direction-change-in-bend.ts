import { checkObserved } from '../../checks'
import { checkCrossings } from '../../crossings'
import { defineItem } from '../../define-item'

export const directionChangeInBend = defineItem({
  id: 'direction-change-in-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Does every conductor keep its direction inside the bends?',
  titles: {
    meets: 'Conductors keep their direction inside bends',
    fails: 'A conductor changes direction inside a bend',
  },
  appliesTo: { needs: ['bends', 'crossings'], says: 'conductors that cross a bend' },
  limits: [],
  sourceKeys: ['guideCircuitConstruction', 'commonPractice'],
  restsOn: ['artwork', 'plan', 'construction.layers.*.role', 'features.conductors.*.crossings'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.conductors[].crossings[].directionChangesInside', worse: 'yes' }],
  check: (context) =>
    checkCrossings(context, ({ conductor, crossing, bendName, path, places }) =>
      checkObserved({
        observed: crossing.directionChangesInside,
        wanted: false,
        path: [...path, 'directionChangesInside'],
        label: `whether ${conductor.name} changes direction inside ${bendName}`,
        whenRight: `${conductor.name} keeps its direction inside ${bendName}.`,
        whenWrong: `${conductor.name} changes direction inside ${bendName}.`,
        places,
        sourceKey: 'guideCircuitConstruction',
      }),
    ),
})
