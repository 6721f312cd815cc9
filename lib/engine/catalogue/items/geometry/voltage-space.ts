import { findKnownSpacing, HAZARD_ABOVE_VOLT } from '../../../conductors'
import type { EvaluationContext } from '../../../context'
import type { Limit, Outcome, Place } from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { cannotTell, decide, makeSourceLimit, notApplicable, notComputedFrom } from '../../decide'
import { defineItem, type ItemDefinition } from '../../define-item'

const SAFETY_CAUTION =
  'A screening figure for conductors side by side on one face. Safety standards, local codes, altitude, dirt and moisture may ask for more, and rule.'

const RESTS_ON = [
  'features.conductors.*.voltageVolt',
  'features.conductors.*.isCovered',
  'features.conductors.*.spaceMm',
] as const

const MONOTONE: ItemDefinition['monotone'] = [
  { path: 'features.conductors[].spaceMm', worse: 'smaller' },
  { path: 'features.conductors[].isCovered', worse: 'no' },
]

export const voltageSpace = defineItem({
  id: 'voltage-space',
  section: 'geometry',
  severity: 'major',
  question: `Does the space between conductors suit a working voltage of up to ${HAZARD_ABOVE_VOLT} V?`,
  titles: { meets: 'Spaces suit their voltages', fails: 'A space is too small for its voltage' },
  appliesTo: { needs: ['conductors'], says: 'designs that list conductors with what they carry' },
  limits: [],
  sourceKeys: ['voltageSpacing'],
  restsOn: RESTS_ON,
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: MONOTONE,
  check: (context) =>
    check(context, (volt) => volt <= HAZARD_ABOVE_VOLT, `no voltage up to ${HAZARD_ABOVE_VOLT} V is stated`),
})

export const hazardousVoltageSpace = defineItem({
  id: 'hazardous-voltage-space',
  section: 'geometry',
  severity: 'blocking',
  question: `Does the space between conductors suit a working voltage above ${HAZARD_ABOVE_VOLT} V?`,
  titles: {
    meets: 'Spaces suit their hazardous voltages',
    fails: 'A space is too small for a hazardous voltage',
  },
  appliesTo: { needs: ['hazardous-voltages'], says: `designs with a voltage above ${HAZARD_ABOVE_VOLT} V` },
  limits: [],
  sourceKeys: ['voltageSpacing'],
  restsOn: RESTS_ON,
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: MONOTONE,
  check: (context) =>
    check(context, (volt) => volt > HAZARD_ABOVE_VOLT, `no voltage above ${HAZARD_ABOVE_VOLT} V is stated`),
})

function check({ design }: EvaluationContext, isAsked: (volt: number) => boolean, nothing: string): Outcome[] {
  const outcomes = design.features.conductors.flatMap((conductor, index): Outcome[] => {
    const places: Place[] = [placeOf('conductor', conductor)]
    const missing = (field: string, label: string) => ({
      path: ['features', 'conductors', index, field],
      label: `${label} of ${conductor.name}`,
    })
    const { voltageVolt: volt, spaceMm, isCovered } = conductor
    if (volt === null) return [notComputedFrom([missing('voltageVolt', 'voltage to the neighbour')], places)]
    if (!isAsked(volt)) return []
    if (volt === 0) return [notApplicable(`${conductor.name} has no voltage to its neighbour`, places)]
    if (spaceMm === null) return [notComputedFrom([missing('spaceMm', 'space')], places)]
    if (isCovered === null) {
      // Bare copper never needs less: what suffices bare suffices, and what is too little covered is too little.
      const [bare, covered] = [findKnownSpacing(volt, 'bare'), findKnownSpacing(volt, 'covered')]
      if (bare.enoughMm === null || spaceMm < bare.enoughMm) {
        if (covered.atLeastMm === null || spaceMm >= covered.atLeastMm) {
          return [notComputedFrom([missing('isCovered', 'cover')], places)]
        }
        return [compare(conductor.name, volt, spaceMm, covered.atLeastMm, 'covered', places)]
      }
      return [compare(conductor.name, volt, spaceMm, bare.enoughMm, 'bare', places)]
    }
    const surface = isCovered ? 'covered' : 'bare'
    const { atLeastMm, enoughMm } = findKnownSpacing(volt, surface)
    if (enoughMm !== null && spaceMm >= enoughMm) {
      return [compare(conductor.name, volt, spaceMm, enoughMm, surface, places)]
    }
    if (atLeastMm !== null && spaceMm < atLeastMm) {
      return [compare(conductor.name, volt, spaceMm, atLeastMm, surface, places)]
    }
    const known = [
      ...(atLeastMm === null ? [] : [`at least ${inSentence(atLeastMm, 'mm')} is needed`]),
      ...(enoughMm === null ? [] : [`${inSentence(enoughMm, 'mm')} would be enough`]),
    ]
    return [
      cannotTell(
        `the space of ${conductor.name} at ${inSentence(volt, 'volt')}`,
        {
          because: `no spacing is known for that voltage ${surface}${known.length === 0 ? '' : `; ${known.join(', ')}`}`,
          decidedBy: 'the standard that the product must meet decides',
        },
        places,
        { value: { value: spaceMm, unit: 'mm' } },
      ),
    ]
  })
  return outcomes.length > 0 ? outcomes : [notApplicable(nothing)]
}

function compare(
  name: string,
  volt: number,
  spaceMm: number,
  limitMm: number,
  surface: 'bare' | 'covered',
  places: readonly Place[],
): Outcome {
  const limit: Limit = makeSourceLimit({
    key: 'voltageSpaceMm',
    value: limitMm,
    unit: 'mm',
    sense: 'at-least',
    sourceKey: 'voltageSpacing',
  })
  return decide({
    value: spaceMm,
    limit,
    places,
    what: `space of ${name} at ${inSentence(volt, 'volt')}, ${surface}`,
    equation: 'the known spacing at this voltage or the next known one: the least spacing never falls with the voltage',
    cautions: [SAFETY_CAUTION],
    isTyped: true,
  })
}
