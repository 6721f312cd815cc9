import { LEAST_RADIUS_RATIO } from '../bending'
import type { BendResult, ConductorStrainResult, KnownAtLeast, Outcome } from '../results'
import { cannotTell } from './decide'

/** A layer, with its plating or foil where it has both and one of them decides: `L2 (plated copper)`. */
export function nameCopper({ name, parts, governingMaterial }: ConductorStrainResult): string {
  return parts.length > 1 && governingMaterial !== null ? `${name} (${governingMaterial.name})` : name
}

/** Said with a figure of a bend at the least radius that can be told, which stands for a tighter one. */
export const AT_LEAST_RADIUS = `Worked out at ${LEAST_RADIUS_RATIO} times the thickness; the bend is tighter, so that it is worse.`

/** A figure that stands for more than itself, without a range of its own. */
export const AS_BOUND = { bound: 'more-than' } as const

/**
 * Where no model reaches a bend, a figure of its strain decides nothing. Below the least radius that a strain can be told at, one thing
 * stays certain: what fails at that radius fails at a tighter one too. The outcome then gives the figure at that radius, as a bound.
 *
 * @param judgeKnown  what comes of the bend at that radius; null where that says nothing
 */
export function withinModel(
  result: BendResult,
  outcome: Outcome,
  judgeKnown: (known: KnownAtLeast) => Outcome | null,
): Outcome {
  if (outcome.kind !== 'decided' || result.modelLimits.length === 0) return outcome
  const known = outcome.verdict !== 'fails' || result.knownAtLeast === null ? null : judgeKnown(result.knownAtLeast)
  const isCertain = known?.kind === 'decided' && known.verdict === 'fails'
  const limit = result.modelLimits.find(({ kind }) => kind !== 'tight-radius' || !isCertain)
  if (limit === undefined) return known ?? outcome
  return cannotTell(`bend ${result.name}`, limit, outcome.places, { value: outcome.value, limit: outcome.limit })
}
