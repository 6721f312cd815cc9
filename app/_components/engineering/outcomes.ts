import {
  compareVerdicts,
  type DraftEvaluation,
  getOutcomeVerdict,
  getWorstVerdict,
  type Outcome,
  type Place,
  type Verdict,
} from '@/lib/engine'

/** An outcome together with the items that it belongs to. */
export interface PlacedOutcome {
  readonly itemIds: readonly string[]
  readonly outcome: Outcome
}

/**
 * What the catalogue says about one thing of the design, worst first. What keeps several items from being worked out is said once, for all
 * of them: a decided outcome has a value and a limit of its own and stands alone.
 */
export function listOutcomesAt(evaluation: DraftEvaluation, kind: Place['kind'], id: string): PlacedOutcome[] {
  const found: PlacedOutcome[] = []
  for (const item of evaluation.items) {
    for (const outcome of item.outcomes) {
      if (!outcome.places.some((place) => place.kind === kind && place.id === id)) continue
      const at = found.findIndex((other) => saysTheSame(other.outcome, outcome))
      const same = found[at]
      if (same === undefined) found.push({ itemIds: [item.itemId], outcome })
      else found[at] = { ...same, itemIds: [...new Set([...same.itemIds, item.itemId])] }
    }
  }
  return found.sort((a, b) => compareVerdicts(getOutcomeVerdict(a.outcome), getOutcomeVerdict(b.outcome)))
}

/** Of those that rest on no figure of their own. */
const WITHOUT_FIGURE: ReadonlySet<Outcome['kind']> = new Set(['cannot-tell', 'not-computed', 'not-applicable'])

function saysTheSame(a: Outcome, b: Outcome): boolean {
  return WITHOUT_FIGURE.has(a.kind) && a.kind === b.kind && a.summary === b.summary
}

/** The verdict to show beside a bend or a zone; null where the catalogue says nothing about it. */
export function findVerdictAt(evaluation: DraftEvaluation, kind: Place['kind'], id: string): Verdict | null {
  let worst = worstOf.get(evaluation)
  if (worst === undefined) {
    worst = findWorst(evaluation)
    worstOf.set(evaluation, worst)
  }
  return worst.get(`${kind} ${id}`) ?? null
}

/** Rows of long tables ask for theirs one by one: what one pass over the results says is kept with them. */
const worstOf = new WeakMap<DraftEvaluation, ReadonlyMap<string, Verdict>>()

function findWorst({ items }: DraftEvaluation): ReadonlyMap<string, Verdict> {
  const worst = new Map<string, Verdict>()
  for (const outcome of items.flatMap(({ outcomes }) => outcomes)) {
    for (const { kind, id } of outcome.places) {
      const key = `${kind} ${id}`
      const before = worst.get(key)
      const verdict = getOutcomeVerdict(outcome)
      worst.set(key, before === undefined ? verdict : getWorstVerdict([before, verdict]))
    }
  }
  return worst
}
