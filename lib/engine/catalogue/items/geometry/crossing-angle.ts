import { checkCrossings } from '../../crossings'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { sourceOf } from '../../drawn'

export const crossingAngle = defineItem({
  id: 'crossing-angle',
  section: 'geometry',
  severity: 'major',
  question: 'Do conductors cross each bend at right angles to its axis?',
  titles: { meets: 'Conductors cross bends at right angles', fails: 'A conductor crosses a bend at a slant' },
  appliesTo: { needs: ['bends', 'crossings'], says: 'conductors that cross a bend' },
  limits: ['crossingAngleDeg'],
  sourceKeys: [],
  restsOn: ['artwork', 'plan', 'construction.layers.*.role', 'features.conductors.*.crossings'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.conductors[].crossings[].angleToAxisDeg', worse: 'smaller' }],
  check: (context) => {
    const limit = context.getLimit('crossingAngleDeg')
    return checkCrossings(context, ({ conductor, crossing, bendName, path, places }) =>
      crossing.angleToAxisDeg === null
        ? notComputed([...path, 'angleToAxisDeg'], `angle of ${conductor.name} to the axis of ${bendName}`, places)
        : decide({
            value: crossing.angleToAxisDeg,
            limit,
            places,
            what: `angle of ${conductor.name} to the axis of ${bendName}`,
            ...sourceOf(context, [...path.slice(0, -1), crossing.bendId, 'angleToAxisDeg'], 'angle as drawn'),
          }),
    )
  },
})
