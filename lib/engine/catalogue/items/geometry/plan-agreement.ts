import type { EvaluationContext } from '../../../context'
import { callByName, type DrawnValue } from '../../../design'
import type { Outcome, Place } from '../../../results'
import { capitalise, inSentence } from '../../../units'
import { checkRouteShares } from '../../band-shares'
import { DESIGN_PLACE, placeOf } from '../../checks'
import { decide, makeNoneAllowed, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'

export const planAgreement = defineItem({
  id: 'plan-agreement',
  section: 'geometry',
  severity: 'major',
  question: 'Is the plan finished as far as it is drawn, and does what was stated agree with it?',
  titles: {
    meets: 'What was stated agrees with the plan',
    fails: 'The plan is unfinished, or something stated contradicts it',
  },
  appliesTo: { needs: ['plan'], says: 'parts that are drawn in plan' },
  limits: [],
  sourceKeys: ['ownChoice', 'exactArithmetic'],
  restsOn: [
    'plan',
    'construction.layers',
    'construction.zones',
    'bends',
    'features',
    'brief.array.partCount',
    'brief.array.frameWidthMm',
    'brief.array.fiducials',
    'brief.marking.letterHeightMm',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [],
  check: (context) => {
    const found = [
      ...findProblems(context),
      ...findStrays(context),
      ...findContradictions(context),
      ...findOversizedZones(context),
    ]
    const shares = checkRouteShares(context)
    if (found.length > 0) return [...found, ...shares]
    const stated = context.drawing.values.filter((value) => value.stated !== null)
    if (stated.length === 0) {
      return shares.length > 0 ? shares : [notApplicable('nothing that the plan draws is stated besides')]
    }
    return [
      ...shares,
      decide({
        value: 0,
        limit: makeNoneAllowed('planContradictionsCount', 'ownChoice'),
        places: [DESIGN_PLACE],
        what: 'contradictions between the plan and what was stated',
        equation: 'stated against drawn, within 0.05 mm and 0.5°',
        remark: `Compared: ${stated.length}.`,
      }),
    ]
  },
})

function fail(summary: string, places: readonly Place[]): Outcome {
  return {
    ...decide({
      value: 1,
      limit: makeNoneAllowed('planContradictionsCount', 'ownChoice'),
      places,
      what: 'contradictions with the plan',
      equation: 'stated against drawn, within 0.05 mm and 0.5°',
    }),
    summary,
  }
}

/** What is drawn, and lies off the part. */
function findStrays({ design, drawing }: EvaluationContext): Outcome[] {
  const { measures } = drawing
  if (measures === null) return []
  const strays = [
    ...(['holes', 'components', 'stiffeners'] as const).flatMap((list) =>
      measures.placed[list].filter(({ isOnPart }) => !isOnPart).map(({ id }) => ({ list, id })),
    ),
    ...measures.routes.leavingIds.map((id) => ({ list: 'conductors' as const, id })),
  ]
  return strays.map(({ list, id }) => {
    const name = design.features[list].find((entry) => entry.id === id)?.name ?? id
    return fail(`${name} is drawn where the part is not, wholly or partly.`, [placeOf(STRAY_KINDS[list], { id, name })])
  })
}

const STRAY_KINDS = {
  holes: 'hole',
  components: 'component',
  stiffeners: 'stiffener',
  conductors: 'conductor',
} as const

function findProblems({ drawing }: EvaluationContext): Outcome[] {
  return (drawing.measures?.problems ?? []).map(({ message }) => fail(`${capitalise(message)}.`, [DESIGN_PLACE]))
}

function findContradictions({ drawing }: EvaluationContext): Outcome[] {
  return drawing.values.filter(({ disagrees }) => disagrees).map((value) => fail(describe(value), value.places))
}

function describe({ what, unit, stated, drawn }: DrawnValue): string {
  const say = (value: DrawnValue['stated']): string =>
    typeof value === 'number' && unit !== null
      ? inSentence(value, unit)
      : typeof value === 'boolean'
        ? value
          ? 'yes'
          : 'no'
        : String(value)
  return `${capitalise(what)}: stated ${say(stated)}, drawn ${say(drawn)}.`
}

/** A zone that has no area yet must at least fit into the outline: in its greatest extent, and in its area. */
function findOversizedZones({ design, drawing }: EvaluationContext): Outcome[] {
  const part = drawing.measures?.part ?? null
  if (part === null) return []
  const drawn = new Set(drawing.measures?.areas.map(({ zoneId }) => zoneId))
  const longestMm = Math.hypot(part.lengthMm, part.widthMm)
  return design.construction.zones.flatMap((zone) => {
    const { lengthMm, widthMm } = zone
    if (drawn.has(zone.id)) return []
    const sides = [lengthMm, widthMm].filter((side) => side !== null)
    const isTooLong = sides.some((side) => side > longestMm)
    const isTooLarge = lengthMm !== null && widthMm !== null && lengthMm * widthMm > part.areaMm2 * (1 + 1e-9)
    if (!isTooLong && !isTooLarge) return []
    return [
      fail(
        `${callByName('Zone', zone.name)} is stated as ${sides.map((side) => inSentence(side, 'mm')).join(' by ')}; the outline of the plan is ${inSentence(part.lengthMm, 'mm')} by ${inSentence(part.widthMm, 'mm')}.`,
        [placeOf('zone', zone)],
      ),
    ]
  })
}
