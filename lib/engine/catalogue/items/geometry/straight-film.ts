import type { EvaluationContext } from '../../../context'
import { callByName, FLAT_ZONE_KINDS, listStiffeners, type MarkableList } from '../../../design'
import type { Limit, Outcome, QuantityRange } from '../../../results'
import { type BendUnderCheck, checkDistanceToBend, getRadiusRangeMm, listBends, placeOf } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { isDrawn, sourceOf } from '../../drawn'
import { SECTION_INPUTS } from '../../item-inputs'
import { readListState } from '../../listed'
import { NEEDS } from '../../needs'

export const straightFilm = defineItem({
  id: 'straight-film',
  section: 'geometry',
  severity: 'major',
  question:
    'Does plain straight film lie at both ends of each bend, up to the edges of rigid zones and stiffeners, free of openings, pads and width steps?',
  titles: {
    meets: 'Plain straight film lies beside each bend',
    fails: 'An edge, opening, pad or width step lies beside a bend, or its distances contradict each other',
  },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: ['bendToRigidMm'],
  sourceKeys: ['guideRigidFlex2023', 'ownChoice'],
  restsOn: [
    'artwork',
    'plan',
    'bends',
    'features.stiffeners',
    'features.coverlayOpenings',
    'features.pads',
    'features.widthSteps',
    'features.none',
    ...SECTION_INPUTS,
  ],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  // Not by the bend's own distance: a smaller one may be the one that agrees with the stiffener's.
  monotone: [
    { path: 'features.stiffeners[].nearestBend.distanceMm', worse: 'smaller' },
    { path: 'features.coverlayOpenings[].nearestBend.distanceMm', worse: 'smaller' },
    { path: 'features.pads[].nearestBend.distanceMm', worse: 'smaller' },
    { path: 'features.widthSteps[].nearestBend.distanceMm', worse: 'smaller' },
  ],
  check: (context) => {
    const limit = context.getLimit('bendToRigidMm')
    return [
      ...(NEEDS.transitions.isMet(context) ? listBends(context) : []).map(({ bend, index, place }) =>
        bend.distanceToRigidMm === null
          ? notComputed(
              ['bends', index, 'distanceToRigidMm'],
              `distance of ${callByName('bend', bend.name)} from a rigid edge`,
              [place],
              'typed',
            )
          : decide({
              value: bend.distanceToRigidMm,
              limit,
              places: [place],
              what: `${callByName('bend', bend.name)} to the nearest rigid or stiffened edge`,
              ...rangeOverRadius(context, bend, index),
              ...sourceOf(context, ['bends', index, 'distanceToRigidMm'], 'distance in the flat'),
            }),
      ),
      ...checkDistanceToBend(context, { list: 'stiffeners', limit }),
      ...checkSteps(context, limit),
      ...listBends(context).flatMap((checked) => findContradictions(context, checked)),
    ]
  },
})

/** Whatever changes the stiffness beside a bend gathers its curvature. Lands beyond a rigid or stiffened edge lie beyond the straight film. */
function checkSteps(context: EvaluationContext, limit: Limit): Outcome[] {
  const flat = new Set(
    context.design.construction.zones.filter(({ kind }) => FLAT_ZONE_KINDS.has(kind)).map(({ id }) => id),
  )
  const isOnFilm = ({ zoneId }: { zoneId: string | null }) => zoneId === null || !flat.has(zoneId)
  return [
    ...whileListIsOpen(context, 'coverlayOpenings'),
    ...checkDistanceToBend(context, { list: 'coverlayOpenings', limit }),
    ...whileListIsOpen(context, 'pads'),
    ...checkDistanceToBend(context, { list: 'pads', limit, when: isOnFilm }),
    ...whileListIsOpen(context, 'widthSteps'),
    ...checkDistanceToBend(context, { list: 'widthSteps', limit }),
  ]
}

/** An empty list that nobody marked as empty is asked for: what may lie beside the bend is not known then. */
function whileListIsOpen(context: EvaluationContext, list: MarkableList): Outcome[] {
  const state = readListState(list, context)
  if (typeof state === 'string') return []
  return [
    {
      kind: 'not-computed',
      missing: [state.missing],
      places: [],
      summary: `Not computed: ${state.because}.`,
      rests: 'typed',
    },
  ]
}

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
          what: `distances of ${callByName('bend', bend.name)} that contradict each other`,
          equation: 'nearest edge against the distance of each stiffener',
          isTyped: true,
        }),
        summary: `${callByName('Bend', bend.name)} states ${nearestMm} mm to its nearest edge, and ${callByName('stiffener', stiffener.name)} states ${distanceMm} mm to that bend: one of the two is wrong.`,
      },
    ]
  })
}
