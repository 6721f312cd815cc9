import { type Assembly, assemble } from '../assembly'
import { findItem } from '../catalogue'
import type { EvaluationContext } from '../context'
import type { Design } from '../design'
import { buildContext, type EvaluateOptions } from '../evaluate'
import {
  type BendResult,
  getOutcomeVerdict,
  getWorstVerdict,
  type Outcome,
  readBendLife,
  type Verdict,
} from '../results'
import type { RemedyState } from './remedy'

/** A design with the figures of its bends and zones, computed as the full evaluation does, without pictures. */
export interface BendAssessment {
  readonly design: Design
  readonly assembly: Assembly
  readonly context: EvaluationContext
  readonly result: BendResult
  readonly state: RemedyState
  /** Outcomes of an item of the catalogue for this design, decided when first asked for. */
  readonly check: (itemId: string) => readonly Outcome[]
}

export type AssessOptions = Pick<EvaluateOptions, 'limits' | 'testedLives' | 'facts'>

/**
 * Figures and verdicts of one bend and of all zones. The catalogue's own items decide, so that the verdicts are those
 * of a full evaluation.
 *
 * @param basis  an assessment of a design that this one was edited from
 * @returns null where the design has no such bend
 */
export function assessBend(
  design: Design,
  bendId: string,
  options: AssessOptions,
  basis?: BendAssessment,
): BendAssessment | null {
  const at = design.bends.findIndex(({ id }) => id === bendId)
  const bend = design.bends[at]
  const assembly = assemble(design, {
    detail: 'figures',
    testedLives: options.testedLives ?? [],
    ...(basis === undefined ? {} : { basis: basis.assembly }),
  })
  const result = assembly.bends[at]
  if (bend === undefined || result === undefined) return null
  const context = buildContext(design, { limits: options.limits ?? [], facts: options.facts ?? {} }, assembly)
  const strain = findBendOutcomes('bend-strain', context)
  const life = findBendOutcomes('fatigue-life', context)
  const strainVerdictOf = (id: string): Verdict => verdictOfOutcome(strain.get(id))
  const lifeVerdictOf = (id: string): Verdict => verdictOfOutcome(life.get(id))
  const verdictOf = (id: string): Verdict => getWorstVerdict([strainVerdictOf(id), lifeVerdictOf(id)])
  const explain = (id: string): string =>
    (strainVerdictOf(id) === verdictOf(id) ? strain.get(id) : life.get(id))?.summary ?? ''
  const { allowablePct, peakRangePct } = result
  const zone = assembly.zones.find(({ zoneId }) => zoneId === bend.zoneId)
  return {
    design,
    assembly,
    context,
    result,
    check: makeItemChecker(context),
    state: {
      verdict: verdictOf(bendId),
      strainVerdict: strainVerdictOf(bendId),
      lifeVerdict: lifeVerdictOf(bendId),
      because: explain(bendId),
      insideRadiusMm: bend.insideRadiusMm,
      peakStrainPct: result.peakStrainPct,
      peakRangePct,
      allowablePct,
      marginFraction: allowablePct === null ? null : findMarginFraction(result.conductors),
      minRadiusMm: result.minRadiusByStrainMm,
      survivalLifeCycles: result.survivalLifeCycles,
      survivalLife: readBendLife(result),
      unprovenFoilLayers: countUnprovenFoils(result.conductors),
      momentNmm: result.momentNmm,
      pullN: bend.pullN ?? 0,
      twistDeg: bend.twistDeg ?? 0,
      twistLengthMm: bend.twistLengthMm ?? 0,
      bendZoneThicknessUm: zone?.thicknessUm ?? 0,
      zones: assembly.zones.map(({ zoneId, name, thicknessUm }) => ({ zoneId, name, thicknessUm })),
      planSizeMm: design.construction.zones.reduce(
        (sum, { lengthMm, widthMm }) => sum + (lengthMm ?? 0) + (widthMm ?? 0),
        0,
      ),
      otherBends: design.bends
        .filter(({ id }) => id !== bendId)
        .map(({ id, name }) => ({ bendId: id, name, verdict: verdictOf(id), because: explain(id) })),
      costIndex: null,
    },
  }
}

/** Foil that is not rolled-annealed, in a dynamic bend. */
export const countUnprovenFoils = (conductors: BendResult['conductors']): number =>
  conductors.filter(({ ductilityLifeCycles }) => ductilityLifeCycles !== null).length

/** Of the copper that has least to spare at the worst corner: one that has more at nominal may have less there. */
export function findMarginFraction(conductors: BendResult['conductors']): number | null {
  let least: number | null = null
  for (const { parts } of conductors) {
    for (const { peakRangePct, allowablePct, allowableRangePct } of parts) {
      const lowestPct = allowableRangePct?.low ?? allowablePct
      if (lowestPct !== null) least = Math.min(least ?? 1, 1 - peakRangePct.high / lowestPct)
    }
  }
  return least
}

function verdictOfOutcome(outcome: Outcome | undefined): Verdict {
  return outcome === undefined ? 'not-applicable' : getOutcomeVerdict(outcome)
}

function isWorse(outcome: Outcome, known: Outcome): boolean {
  const [verdict, other] = [getOutcomeVerdict(outcome), getOutcomeVerdict(known)]
  return verdict !== other && getWorstVerdict([verdict, other]) === verdict
}

function findBendOutcomes(itemId: string, context: EvaluationContext): Map<string, Outcome> {
  const outcomes = new Map<string, Outcome>()
  for (const outcome of checkItem(itemId, context)) {
    const bend = outcome.places.find(({ kind }) => kind === 'bend')
    const known = bend === undefined ? undefined : outcomes.get(bend.id)
    // A fold made before is an outcome of its own: the worse of the two speaks for the bend.
    if (bend !== undefined && (known === undefined || isWorse(outcome, known))) outcomes.set(bend.id, outcome)
  }
  return outcomes
}

function makeItemChecker(context: EvaluationContext): BendAssessment['check'] {
  const decided = new Map<string, readonly Outcome[]>()
  return (itemId) => {
    const outcomes = decided.get(itemId) ?? checkItem(itemId, context)
    decided.set(itemId, outcomes)
    return outcomes
  }
}

/** Outcomes of a computed item of the catalogue. */
function checkItem(itemId: string, context: EvaluationContext): readonly Outcome[] {
  const check = findItem(itemId)?.check
  if (check === undefined || check === null) throw new RangeError(`"${itemId}" is not a computed item of the catalogue`)
  return check(context)
}
