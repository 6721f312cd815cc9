import type { EvaluationContext } from '../../context'
import type { Outcome } from '../../results'
import { capitalise } from '../../units'
import { BRIEF_PLACE } from '../checks'
import { decide, makeDesignLimit, notApplicable, notComputed } from '../decide'
import { defineItem, type ItemDefinition } from '../define-item'
import { readFieldPlaces } from '../field-places'
import { type FieldDemand, listFieldDemands } from './combine'
import type { Profile } from './profile'

/** Ids of the two items that ask for what profiles require; they are there where a profile requires something. */
const EARLY_ID = 'profile-fields'
const LAYOUT_ID = 'profile-layout-fields'
export const PROFILE_ITEM_IDS: readonly string[] = [EARLY_ID, LAYOUT_ID]

/**
 * Items that ask for the fields which the profiles require: those of features once the layout exists, the others early. A profile that is chosen and
 * is in neither the program nor this version of the catalogue is named there: what it asks for is not known.
 */
export function defineProfileFields(profiles: readonly Profile[], unknownIds: readonly string[]): ItemDefinition[] {
  const demands = listFieldDemands(profiles)
  const isLayout = ({ field }: FieldDemand) => field.startsWith('features.')
  const early = demands.filter((demand) => !isLayout(demand))
  const layout = demands.filter(isLayout)
  const survival = findSurvivalDemand(profiles)
  return [
    ...(early.length + unknownIds.length === 0 && survival === null
      ? []
      : [
          define(
            EARLY_ID,
            'early',
            'Is every fact that the profiles of this project require stated?',
            early,
            unknownIds,
            survival,
          ),
        ]),
    ...(layout.length === 0
      ? []
      : [
          define(
            LAYOUT_ID,
            'layout',
            'Is every detail of the layout that the profiles require stated?',
            layout,
            [],
            null,
          ),
        ]),
  ]
}

function define(
  id: string,
  decidedWhen: 'early' | 'layout',
  question: string,
  demands: readonly FieldDemand[],
  unknownIds: readonly string[],
  survival: SurvivalDemand | null,
): ItemDefinition {
  return defineItem({
    id,
    section: 'fabrication',
    severity: 'major',
    question,
    prose: {
      why: 'A profile names the facts without which a part of its kind cannot be judged; a fact that nobody states is guessed later.',
      howToCheck: 'Fill in the fields that are named, or mark the list as having none.',
    },
    titles: { meets: 'All required fields are stated', fails: 'What a profile requires does not hold' },
    appliesTo: { needs: [], says: 'projects with a profile that requires fields' },
    limits: [],
    sourceKeys: ['workspaceRule'],
    restsOn: [
      ...new Set([
        ...demands.map(({ field }) => field as ItemDefinition['restsOn'][number]),
        ...(survival === null ? [] : [SURVIVAL_FIELD]),
      ]),
    ],
    decidedWhen,
    answeredBy: ['member'],
    monotone: [],
    check: (context) => [
      ...unknownIds.map(describeUnknown),
      ...demands.flatMap((demand) => checkDemand(context, demand)),
      ...(survival === null ? [] : checkSurvival(context, survival)),
    ],
  })
}

const SURVIVAL_FIELD = 'brief.lifeSurvivalPct' as const

interface SurvivalDemand {
  readonly leastPct: number
  readonly profileNames: readonly string[]
}

/** The highest share that any of the profiles asks for. */
function findSurvivalDemand(profiles: readonly Profile[]): SurvivalDemand | null {
  const asking = profiles.flatMap(({ name, leastSurvivalPct }) =>
    leastSurvivalPct == null ? [] : [{ name, leastSurvivalPct }],
  )
  if (asking.length === 0) return null
  const leastPct = Math.max(...asking.map(({ leastSurvivalPct }) => leastSurvivalPct))
  return {
    leastPct,
    profileNames: [
      ...new Set(asking.filter((each) => each.leastSurvivalPct === leastPct).map(({ name }) => name)),
    ].sort(),
  }
}

/** Lives of bends that move rest on the share that must survive; a part without one has none to state. */
function checkSurvival({ design }: EvaluationContext, { leastPct, profileNames }: SurvivalDemand): Outcome[] {
  const whose = `required by profile ${profileNames.join(', ')}`
  const stated = design.brief.lifeSurvivalPct
  if (design.bends.length > 0 && design.bends.every(({ use }) => use !== null && use !== 'dynamic')) {
    return [notApplicable(`no bend moves in service, so no share has to survive (${whose})`)]
  }
  if (stated === null) {
    const label = 'the share that must survive'
    return [
      {
        ...notComputed(['brief', 'lifeSurvivalPct'], label, [BRIEF_PLACE], 'typed'),
        summary: `Not computed: ${label} is missing, at least ${leastPct} % ${whose}.`,
      },
    ]
  }
  return [
    decide({
      value: stated,
      limit: makeDesignLimit({
        key: 'leastSurvivalPct',
        value: leastPct,
        unit: 'pct',
        sense: 'at-least',
        sourceKey: 'workspaceRule',
        name: `profile ${profileNames.join(', ')}`,
      }),
      places: [BRIEF_PLACE],
      what: 'share that must survive',
      equation: 'as stated',
      isTyped: true,
    }),
  ]
}

function checkDemand(context: EvaluationContext, { field, where, profileNames }: FieldDemand): Outcome[] {
  const { places, otherwise } = readFieldPlaces(context, field, where)
  const whose = `required by profile ${profileNames.join(', ')}`
  const stated = places.filter(({ isStated, isAssumed }) => isStated && !isAssumed)
  return [
    ...otherwise.map(
      (outcome): Outcome => ({ ...outcome, summary: `${outcome.summary.replace(/\.$/, '')} (${whose}).` }),
    ),
    ...places
      .filter((place) => !stated.includes(place))
      .map(
        ({ path, label, places: at, isAssumed, isStated }): Outcome => ({
          kind: 'not-computed',
          missing: [{ path, label }],
          places: at,
          summary:
            isAssumed && isStated
              ? `Not computed: ${label} is assumed and not confirmed, ${whose}.`
              : `Not computed: ${label} is missing, ${whose}.`,
          rests: 'typed',
        }),
      ),
    ...stated.map(
      ({ label, places: at }): Outcome => ({
        kind: 'said',
        verdict: 'meets',
        rests: 'typed',
        sourceKey: 'workspaceRule',
        places: at,
        summary: `${capitalise(label)} is stated, ${whose}.`,
      }),
    ),
  ]
}

function describeUnknown(id: string): Outcome {
  return {
    kind: 'not-computed',
    missing: [{ path: [], label: `the profile ${id}` }],
    places: [],
    summary: `Not computed: the profile ${id} is chosen and is in no version that this review can read.`,
    rests: 'typed',
  }
}
