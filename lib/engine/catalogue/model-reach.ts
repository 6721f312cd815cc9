import type { BendResult, ConductorStrainResult, KnownAtLeast, Outcome } from '../results'
import { cannotTell } from './decide'

/** A layer, with its plating or foil where it has both and one of them decides: `L2 (plated copper)`. */
export function nameCopper({ name, parts, governingMaterial }: ConductorStrainResult): string {
  return parts.length > 1 && governingMaterial !== null ? `${name} (${governingMaterial.name})` : name
}

/**
 * Where no model reaches a bend, a figure of its strain decides nothing. Below the least radius that a strain can be told at, one thing
 * stays certain: what fails at that radius fails at a tighter one too.
 *
 * @param failsAtLeast  whether what fails here fails there too; copper strain and life, unless another item asks for something else
 */
export function withinModel(
  result: BendResult,
  outcome: Outcome,
  failsAtLeast: (known: KnownAtLeast) => boolean = isCopperPastAllowable,
): Outcome {
  if (outcome.kind !== 'decided' || result.modelLimits.length === 0) return outcome
  const isCertain = outcome.verdict === 'fails' && result.knownAtLeast !== null && failsAtLeast(result.knownAtLeast)
  const limit = result.modelLimits.find(({ kind }) => kind !== 'tight-radius' || !isCertain)
  if (limit === undefined) return outcome
  return cannotTell(`bend ${result.name}`, limit, outcome.places, { value: outcome.value, limit: outcome.limit })
}

/** A life falls short exactly where the strain is more than its allowable. */
function isCopperPastAllowable({ conductors }: KnownAtLeast): boolean {
  return conductors.some(({ peakStrainPct, allowablePct, relationEndPct }) => {
    const allowed = allowablePct ?? relationEndPct
    return allowed !== null && peakStrainPct > allowed
  })
}
