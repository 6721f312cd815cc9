import type { EvaluationContext } from '../context'
import { type MissingInput, type Outcome, placeOf } from '../results'
import { notComputedFrom } from './decide'

type Zone = EvaluationContext['design']['construction']['zones'][number]

/** What the brief has to say for every hole. */
function listBriefGaps({ temperatureCycles, cycleMinDegC, cycleMaxDegC }: EvaluationContext['design']['brief']) {
  const fields = { temperatureCycles, cycleMinDegC, cycleMaxDegC }
  const labels = {
    temperatureCycles: 'temperature cycles',
    cycleMinDegC: 'cold end of the cycles',
    cycleMaxDegC: 'hot end of the cycles',
  }
  return (Object.keys(fields) as (keyof typeof fields)[]).flatMap((field): MissingInput[] =>
    fields[field] === null ? [{ path: ['brief', field], label: labels[field] }] : [],
  )
}

/** What has to be known of the stack for every hole of a zone. */
function listZoneGaps(zone: Zone, position: number): MissingInput[] {
  const labels = {
    throughExpansionPpmPerC: 'expansion through the thickness',
    throughModulusGpa: 'modulus through the thickness',
    glassTransitionDegC: 'glass transition',
  } as const
  return (Object.keys(labels) as (keyof typeof labels)[]).flatMap((field) =>
    zone[field] === null
      ? [{ path: ['construction', 'zones', position, field], label: `${labels[field]} of ${zone.name}` }]
      : [],
  )
}

/** What several holes wait for is named once: the brief's, then each zone's. */
export function listSharedGaps(context: EvaluationContext): Outcome[] {
  const { brief, features, construction } = context.design
  const waiting = features.holes.filter(({ plated }) => plated === true)
  if (waiting.length === 0) return []
  const ofBrief = listBriefGaps(brief)
  return [
    ...(ofBrief.length === 0
      ? []
      : [
          notComputedFrom(
            ofBrief,
            waiting.map((hole) => placeOf('hole', hole)),
          ),
        ]),
    ...construction.zones.flatMap((zone, position) => {
      const inside = waiting.filter(({ zoneId }) => zoneId === zone.id)
      const missing = inside.length === 0 ? [] : listZoneGaps(zone, position)
      return missing.length === 0
        ? []
        : [notComputedFrom(missing, [placeOf('zone', zone), ...inside.map((hole) => placeOf('hole', hole))])]
    }),
  ]
}
