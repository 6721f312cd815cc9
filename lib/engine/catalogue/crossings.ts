import type { EvaluationContext } from '../context'
import type { ConductorFeature } from '../design'
import type { Outcome, Place } from '../results'
import { placeOf } from './checks'

export interface CrossingUnderCheck {
  readonly conductor: ConductorFeature
  readonly crossing: ConductorFeature['crossings'][number]
  readonly bendName: string
  readonly path: readonly (string | number)[]
  readonly places: readonly Place[]
}

/** One outcome for each conductor at each bend that it crosses. */
export function checkCrossings(
  context: EvaluationContext,
  check: (crossing: CrossingUnderCheck) => Outcome,
): Outcome[] {
  const outcomes: Outcome[] = []
  context.design.features.conductors.forEach((conductor, index) => {
    conductor.crossings.forEach((crossing, at) => {
      const bend = context.design.bends.find((candidate) => candidate.id === crossing.bendId)
      const bendName = bend?.name ?? crossing.bendId
      outcomes.push(
        check({
          conductor,
          crossing,
          bendName,
          path: ['features', 'conductors', index, 'crossings', at],
          places: [placeOf('conductor', conductor), { kind: 'bend', id: crossing.bendId, name: bendName }],
        }),
      )
    })
  })
  return outcomes
}
