import type { EvaluationContext } from '../context'
import { getOutcomeVerdict, type ItemBasis, type ItemResult, type Outcome, type Verdict } from '../results'
import { withAssumptions } from './assumptions'
import { notApplicable, notComputedFrom } from './decide'
import type { ItemDefinition, ItemVerdict } from './define-item'
import { USUAL_ITEMS } from './items'
import { measureInArtwork } from './measured'
import { findUnmetNeed } from './needs'

/** What every item comes to, in the catalogue's order; where left out, the items that need no profile. */
export function evaluateCatalogue(
  context: EvaluationContext,
  items: readonly ItemDefinition[] = USUAL_ITEMS,
): ItemResult[] {
  return items.map((item) => evaluateItem(item, context))
}

export function evaluateItem(item: ItemDefinition, context: EvaluationContext): ItemResult {
  const unmet = findUnmetNeed(item.appliesTo.needs, context)
  const measured = measureInArtwork(item.id, context)
  // What artwork shows is there, whatever the design says of it.
  if (unmet !== null && unmet !== undefined && (measured.isWhole || hasFailure(measured.outcomes))) {
    return finish(item, 'computed', findWorst(measured.outcomes), measured.outcomes)
  }
  if (unmet?.kind === 'absent') {
    if (item.isForEveryDesign === true) {
      return finish(item, 'judgment', 'needs-judgment', [notApplicable(unmet.because)])
    }
    return finish(item, item.check === null ? 'judgment' : 'computed', 'not-applicable', [notApplicable(unmet.because)])
  }
  if (unmet?.kind === 'unknown') {
    return finish(item, 'typed', 'not-computed', [
      {
        kind: 'not-computed',
        missing: [unmet.missing],
        places: [],
        summary: `Not computed: ${unmet.because}.`,
        rests: 'typed',
      },
    ])
  }
  if (item.check === null) {
    const missing = item.judgment?.findMissing?.(context) ?? []
    // What the design does not say yet is a gap, and nobody's judgment; what the review does not know yet, a person may know.
    const unsaid = missing.filter(({ path }) => path[0] !== 'facts')
    if (unsaid.length > 0)
      return finish(item, 'typed', 'not-computed', [{ ...notComputedFrom(unsaid, []), rests: 'typed' }])
    return finish(item, 'judgment', 'needs-judgment', missing.length === 0 ? [] : [notComputedFrom(missing, [])])
  }
  const stated = withAssumptions(item.check(context), context.design)
  const found = [
    ...(measured.isWhole ? stated.filter(({ kind }) => kind !== 'not-computed') : stated),
    ...measured.outcomes,
  ]
  const outcomes = found.length === 0 ? [notApplicable('nothing in the design to judge')] : found
  const computed = findWorst(outcomes)
  if (computed === 'not-applicable' && item.isForEveryDesign === true) {
    return finish(item, 'judgment', 'needs-judgment', outcomes)
  }
  const basis = findBasis(outcomes, computed)
  if (isPersonsTurn(item, computed)) {
    return finish(item, item.judgment?.isStatement === true ? 'stated' : 'judgment', 'needs-judgment', outcomes)
  }
  // A recorded yes is nobody's word until a named person stands by it and says where they looked.
  if (basis === 'stated' && (computed === 'meets' || computed === 'thin-margin')) {
    return finish(item, 'stated', 'needs-judgment', outcomes)
  }
  return finish(item, basis, computed, outcomes)
}

/** From the strongest to the weakest. */
const BASIS_RANK: Readonly<Record<ItemBasis, number>> = { computed: 0, typed: 1, stated: 2, judgment: 3 }

/** The weakest of what a verdict rests on: what meets rests on every outcome, anything else on the outcomes that say so. */
function findBasis(outcomes: readonly Outcome[], verdict: Verdict): ItemBasis {
  const restsOnAll = verdict === 'meets' || verdict === 'thin-margin'
  let weakest: ItemBasis = 'computed'
  for (const outcome of outcomes) {
    if (!restsOnAll && getOutcomeVerdict(outcome) !== verdict) continue
    const basis = readBasis(outcome)
    if (BASIS_RANK[basis] > BASIS_RANK[weakest]) weakest = basis
  }
  return weakest
}

function readBasis(outcome: Outcome): ItemBasis {
  if (outcome.kind === 'said') return outcome.rests
  if (outcome.kind === 'not-computed') return outcome.rests ?? 'computed'
  if (outcome.kind !== 'decided') return 'computed'
  return outcome.isStated === true ? 'stated' : outcome.isTyped === true ? 'typed' : 'computed'
}

/**
 * A failed or impossible calculation speaks first; what it cannot see is then a person's to judge. Where facts from
 * outside the design are not at hand, a person may answer in place of the calculation.
 */
function isPersonsTurn({ judgment }: ItemDefinition, computed: Verdict): boolean {
  if (judgment === null) return false
  return judgment.replacesMissing === true
    ? computed === 'not-computed'
    : computed === 'meets' || computed === 'thin-margin'
}

const RANK: Record<Verdict, number> = {
  fails: 5,
  'cannot-tell': 4,
  'not-computed': 3,
  'thin-margin': 2,
  meets: 1,
  'not-applicable': 0,
}

const hasFailure = (outcomes: readonly Outcome[]): boolean =>
  outcomes.some((outcome) => getOutcomeVerdict(outcome) === 'fails')

/** As getWorstVerdict, without the list of verdicts in between. */
function findWorst(outcomes: readonly Outcome[]): Verdict {
  let worst: Verdict = 'not-applicable'
  for (const outcome of outcomes) {
    const verdict = getOutcomeVerdict(outcome)
    if (RANK[verdict] > RANK[worst]) worst = verdict
  }
  return worst
}

function finish(
  item: ItemDefinition,
  basis: ItemResult['basis'],
  verdict: ItemVerdict,
  outcomes: readonly Outcome[],
): ItemResult {
  const matters = findOutcomeThatMatters(outcomes)
  const title = item.titles[verdict]
  return {
    itemId: item.id,
    basis,
    verdict,
    outcomes,
    // A recorded observation may say the same as the title.
    headline: matters === null || matters.summary === `${title}.` ? `${title}.` : `${title}. ${matters.summary}`,
  }
}

/** Of the worst verdict, the outcome that is furthest from its limit, relative to the limit. */
function findOutcomeThatMatters(outcomes: readonly Outcome[]): Outcome | null {
  let chosen: Outcome | null = null
  let chosenRank = -1
  let chosenShortfall = Number.POSITIVE_INFINITY
  for (const outcome of outcomes) {
    const rank = RANK[getOutcomeVerdict(outcome)]
    const shortfall = outcome.kind === 'decided' ? outcome.margin / Math.max(Math.abs(outcome.limit.value), 1e-9) : 0
    if (rank > chosenRank || (rank === chosenRank && shortfall < chosenShortfall)) {
      chosen = outcome
      chosenRank = rank
      chosenShortfall = shortfall
    }
  }
  return chosen
}
