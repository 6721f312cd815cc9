import {
  type DraftEvaluation,
  getOutcomeVerdict,
  getWorstVerdict,
  type Outcome,
  type Place,
  type Verdict,
} from '@/lib/engine'

/** An outcome together with the item that it belongs to. */
export interface PlacedOutcome {
  readonly itemId: string
  readonly outcome: Outcome
}

/** What the catalogue says about one thing of the design, worst first. */
export function listOutcomesAt(evaluation: DraftEvaluation, kind: Place['kind'], id: string): PlacedOutcome[] {
  const found: PlacedOutcome[] = []
  for (const item of evaluation.items) {
    for (const outcome of item.outcomes) {
      if (outcome.places.some((place) => place.kind === kind && place.id === id)) {
        found.push({ itemId: item.itemId, outcome })
      }
    }
  }
  const order: readonly Verdict[] = ['fails', 'not-computed', 'thin-margin', 'meets', 'not-applicable']
  return found.sort((a, b) => order.indexOf(getOutcomeVerdict(a.outcome)) - order.indexOf(getOutcomeVerdict(b.outcome)))
}

/** The verdict to show beside a bend or a zone; null where the catalogue says nothing about it. */
export function findVerdictAt(evaluation: DraftEvaluation, kind: Place['kind'], id: string): Verdict | null {
  const verdicts = listOutcomesAt(evaluation, kind, id).map(({ outcome }) => getOutcomeVerdict(outcome))
  return verdicts.length === 0 ? null : getWorstVerdict(verdicts)
}
