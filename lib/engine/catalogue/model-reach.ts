import type { BendResult, ConductorStrainResult, Outcome } from '../results'
import { cannotTell } from './decide'

/** A layer, with its plating or foil where it has both and one of them decides: `L2 (plated copper)`. */
export function nameCopper({ name, parts, governingMaterial }: ConductorStrainResult): string {
  return parts.length > 1 && governingMaterial !== null ? `${name} (${governingMaterial.name})` : name
}

/**
 * Where no model reaches a bend, a figure of its strain decides nothing. Below the least radius that a strain can be told at, one thing
 * stays certain: a bend that is tighter than a radius at which the strain is known to be too much fails.
 */
export function withinModel(result: BendResult, outcome: Outcome): Outcome {
  if (outcome.kind !== 'decided') return outcome
  const isCertainlyTooTight = outcome.verdict === 'fails' && !result.isMinRadiusFloor
  const limit = result.modelLimits.find(({ kind }) => kind !== 'tight-radius' || !isCertainlyTooTight)
  if (limit === undefined) return outcome
  return cannotTell(`bend ${result.name}`, limit, outcome.places, { value: outcome.value, limit: outcome.limit })
}
