import type { EvaluationContext } from '../../../context'
import { listStiffeners } from '../../../design'
import type { Outcome, QuantityRange } from '../../../results'
import { type BendUnderCheck, checkDistanceToBend, getRadiusRangeMm, listBends, placeOf } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { isDrawn, sourceOf } from '../../drawn'
import { NEEDS } from '../../needs'

export const straightFilm = defineItem({
  id: 'straight-film',
  section: 'geometry',
  severity: 'major',
  question: 'Does straight film lie between each bend and the edges of rigid zones and stiffeners?',
  titles: {
    meets: 'Straight film lies beside each bend',
    fails: 'A bend starts too near an edge, or its distances contradict each other',
  },
  appliesTo: { needs: ['bends', 'edges'], says: 'parts that bend beside a rigid or stiffened zone, or a stiffener' },
  limits: ['bendToRigidMm'],
  sourceKeys: ['guideRigidFlex2023', 'ownChoice'],
  restsOn: ['plan', 'bends', 'features.stiffeners', 'construction.zones.*.kind'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  // Not by the bend's own distance: a smaller one may be the one that agrees with the stiffener's.
  monotone: [{ path: 'features.stiffeners[].nearestBend.distanceMm', worse: 'smaller' }],
  check: (context) => {
    const limit = context.getLimit('bendToRigidMm')
    return [
      ...(NEEDS.transitions.isMet(context) ? listBends(context) : []).map(({ bend, index, place }) =>
        bend.distanceToRigidMm === null
          ? notComputed(
              ['bends', index, 'distanceToRigidMm'],
              `distance of bend ${bend.name} from a rigid edge`,
              [place],
              'typed',
            )
          : decide({
              value: bend.distanceToRigidMm,
              limit,
              places: [place],
              what: `bend ${bend.name} to the nearest rigid or stiffened edge`,
              ...rangeOverRadius(context, bend, index),
              ...sourceOf(context, ['bends', index, 'distanceToRigidMm'], 'distance in the flat'),
            }),
      ),
      ...checkDistanceToBend(context, { list: 'stiffeners', limit }),
      ...listBends(context).flatMap((checked) => findContradictions(context, checked)),
    ]
  },
})

/** A drawn axis stays where it is: at the largest radius the arc takes half of what it grows by from either side. */
function rangeOverRadius(
  context: EvaluationContext,
  bend: BendUnderCheck['bend'],
  index: number,
): { readonly range?: QuantityRange } {
  const path = ['bends', index, 'distanceToRigidMm']
  if (bend.distanceToRigidMm === null || !isDrawn(context, path)) return {}
  const radius = getRadiusRangeMm(bend)
  const half = (radiusMm: number) => ((radiusMm - bend.insideRadiusMm) * bend.angleDeg * Math.PI) / 360
  return { range: { low: bend.distanceToRigidMm - half(radius.high), high: bend.distanceToRigidMm - half(radius.low) } }
}

/** Two readings of one drawing differ by as much. Our choice. */
const READING_MM = 0.05

/** The bend's own distance is that of the nearest edge: no stiffener can lie nearer. */
function findContradictions(context: EvaluationContext, { bend, index, place }: BendUnderCheck): Outcome[] {
  // Drawn and stated are held against each other by `plan-agreement`.
  if (isDrawn(context, ['bends', index, 'distanceToRigidMm'])) return []
  const nearestMm = bend.distanceToRigidMm
  if (nearestMm === null) return []
  return listStiffeners(context.design).flatMap((stiffener): Outcome[] => {
    const distanceMm = stiffener.nearestBend?.bendId === bend.id ? stiffener.nearestBend.distanceMm : null
    if (distanceMm === null || distanceMm >= nearestMm - READING_MM) return []
    return [
      {
        ...decide({
          value: 1,
          limit: makeNoneAllowed('contradictingDistancesCount', 'ownChoice'),
          places: [place, placeOf('stiffener', stiffener)],
          what: `distances of bend ${bend.name} that contradict each other`,
          equation: 'nearest edge against the distance of each stiffener',
          isTyped: true,
        }),
        summary: `Bend ${bend.name} states ${nearestMm} mm to its nearest edge, and stiffener ${stiffener.name} states ${distanceMm} mm to that bend: one of the two is wrong.`,
      },
    ]
  })
}
