import { LEAST_RADIUS_RATIO } from '../bending'
import { callByName } from '../design'
import type { BendResult, ConductorStrainResult, KnownAtLeast, ModelLimit, Outcome } from '../results'
import { cannotTell } from './decide'

/** A layer, with its plating or foil where it has both and one of them decides: `L2 (plated copper)`. */
export function nameCopper({ name, parts, governingMaterial }: ConductorStrainResult): string {
  return parts.length > 1 && governingMaterial !== null ? `${name} (${governingMaterial.name})` : name
}

/** Said with a figure of a bend at the least radius that can be told, which stands for a tighter one. */
export const AT_LEAST_RADIUS = `Worked out at ${LEAST_RADIUS_RATIO} times the thickness; the bend is tighter, so that it is worse.`

/** What these leave out adds to strain, so that a failure without it stands. */
const LOADS_IT_MORE: ReadonlySet<ModelLimit['kind']> = new Set(['loads', 'leaves'])

/** A result without what short leaves leave open: how a section lies, and how long its leaves are, does not hang on their pull. */
export const withoutLeafLimits = (result: BendResult): BendResult =>
  result.modelLimits.some(({ kind }) => kind === 'leaves')
    ? { ...result, modelLimits: result.modelLimits.filter(({ kind }) => kind !== 'leaves') }
    : result

/** A figure that stands for more than itself, without a range of its own. */
export const AS_BOUND = { bound: 'more-than' } as const

/**
 * Where no model reaches a bend, a figure of its strain decides nothing. Below the least radius that a strain can be told at, one thing
 * stays certain: what fails at that radius fails at a tighter one too. The outcome then gives the figure at that radius, as a bound. In the
 * same way what fails without a load that nobody can tell, or with less of it, fails.
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
  const isTight = result.modelLimits.some(({ kind }) => kind === 'tight-radius')
  const limit = result.modelLimits.find(({ kind }) =>
    kind === 'tight-radius' ? !isCertain : !LOADS_IT_MORE.has(kind) || outcome.verdict !== 'fails',
  )
  if (limit === undefined) {
    if (isTight) return known ?? outcome
    const [{ because } = { because: '' }] = result.modelLimits
    return { ...outcome, summary: `${outcome.summary} It is no better than this figure: ${because}.` }
  }
  return cannotTell(callByName('bend', result.name), limit, outcome.places, {
    value: outcome.value,
    limit: outcome.limit,
  })
}

/**
 * A rule that looks at the radius alone: where a load, or a fold before, is stated, a radius that is large enough for the rule says nothing.
 * A motion that does not begin flat strains less than the rule supposes, so that the rule stands.
 */
export function withinRadiusRule(result: BendResult, outcome: Outcome): Outcome {
  if (outcome.kind !== 'decided' || outcome.verdict === 'fails') return outcome
  const { states } = result
  const limit = result.modelLimits.find(({ kind }) => kind === 'states' || LOADS_IT_MORE.has(kind))
  const what = [
    ...((states?.pullN ?? 0) > 0 ? ['a pull'] : []),
    ...(result.leafPull !== null && result.leafPull.strainPct !== 0 ? ['the pull of a short leaf'] : []),
    ...((states?.twistDeg ?? 0) > 0 ? ['a twist'] : []),
    ...((states?.foldedToRadiusMm ?? null) !== null ? ['a fold before'] : []),
  ]
  if (limit === undefined && what.length === 0) return outcome
  return cannotTell(
    callByName('bend', result.name),
    limit ?? {
      because: `a rule for the radius alone does not know ${what.join(' and ')}`,
      decidedBy: 'go by the strain of the copper',
    },
    outcome.places,
    { value: outcome.value, limit: outcome.limit },
  )
}
