import { checkObserved } from '../../checks'
import { checkCrossings } from '../../crossings'
import { defineItem } from '../../define-item'

export const widthChangeInBend = defineItem({
  id: 'width-change-in-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Does every conductor keep its width inside the bends?',
  titles: { meets: 'Conductors keep their width inside bends', fails: 'A conductor changes width inside a bend' },
  appliesTo: { needs: ['bends', 'crossings'], says: 'conductors that cross a bend' },
  limits: [],
  sourceKeys: ['guideCircuitConstruction', 'commonPractice'],
  restsOn: ['artwork', 'plan', 'construction.layers.*.role', 'features.conductors.*.crossings'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.conductors[].crossings[].widthChangesInside', worse: 'yes' }],
  check: (context) =>
    checkCrossings(context, ({ conductor, crossing, bendName, path, places }) =>
      checkObserved({
        observed: crossing.widthChangesInside,
        wanted: false,
        path: [...path, 'widthChangesInside'],
        label: `whether ${conductor.name} changes width inside ${bendName}`,
        whenRight: `${conductor.name} keeps its width inside ${bendName}.`,
        whenWrong: `${conductor.name} changes width inside ${bendName}.`,
        places,
        sourceKey: 'guideCircuitConstruction',
      }),
    ),
})
