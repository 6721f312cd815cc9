import {
  type DecidedOutcome,
  type DraftEvaluation,
  type DraftItemResult,
  type Evaluation,
  getOutcomeVerdict,
  getWorstVerdict,
  type ItemResult,
  keepFollowers,
  type LimitOwner,
  type MarginBand,
  type Outcome,
  type Quantity,
} from '@/lib/engine'
import type { ItemDefinition } from '@/lib/engine/catalogue'
import { capitalise } from '@/lib/engine/units'

/**
 * Results that rest on a limit which its owner does not show: what is handed out is made from the results without that
 * limit, and of those with it the verdict and the band alone.
 */

/** A limit that counts and is not shown, by its key: there is no value here to give away. */
export interface CheckedLimit {
  readonly key: string
  /** The fabricator's name. */
  readonly ownerName: string
}

type Item = Pick<ItemDefinition, 'id' | 'titles' | 'limits'>

/** Of the limit: what is nearer than this still meets, and is called near. Coarse, so that it gives little away. */
const NEAR_FRACTION = 0.1

/** How far a value lies from its limit, in three words. */
export function findMarginBand({ verdict, margin, limit }: DecidedOutcome): MarginBand {
  if (verdict === 'fails') return 'outside'
  if (verdict === 'thin-margin') return 'near-limit'
  const size = Math.abs(limit.value)
  return size > 0 && margin < NEAR_FRACTION * size ? 'near-limit' : 'well-inside'
}

/**
 * Results as those may have them to whom some limits are not shown.
 *
 * @param shown  evaluated with the limits that they are shown: nothing of it needs to be withheld
 * @param full  evaluated with every limit that counts
 */
export function withholdLimits(
  shown: Evaluation,
  full: Evaluation,
  items: readonly Item[],
  checked: readonly CheckedLimit[],
): Evaluation {
  const definitions = new Map(items.map((item) => [item.id, item]))
  const withoutThem = new Map(shown.items.map((item) => [item.itemId, item]))
  return {
    ...shown,
    items: keepFollowers(
      full.items.map((item) => {
        const twin = withoutThem.get(item.itemId)
        // The same without the limits that are not shown: it does not rest on them, or not so that anybody could tell.
        if (twin !== undefined && isSame(twin, item)) return twin
        return withholdItem(item, twin?.outcomes ?? [], definitions.get(item.itemId), checked)
      }),
    ),
  }
}

function withholdItem(
  item: ItemResult,
  shown: readonly Outcome[],
  definition: Item | undefined,
  checked: readonly CheckedLimit[],
): ItemResult {
  const owner = findOwner(definition, checked)
  const outcomes = item.outcomes.map(
    (outcome, index) => shown.find((other) => isSame(other, outcome)) ?? withhold(outcome, shown[index], owner),
  )
  const title = definition?.titles[item.verdict] ?? item.itemId.replaceAll('-', ' ')
  const worst = getWorstVerdict(outcomes.map(getOutcomeVerdict))
  const matters = outcomes.find((outcome) => getOutcomeVerdict(outcome) === worst)
  return {
    itemId: item.itemId,
    basis: item.basis,
    verdict: item.verdict,
    outcomes,
    headline: matters === undefined ? `${title}.` : `${title}. ${matters.summary}`,
    ...(item.followsFrom === undefined ? {} : { followsFrom: item.followsFrom }),
  }
}

function findOwner(definition: Item | undefined, checked: readonly CheckedLimit[]): LimitOwner {
  const keys: readonly string[] = definition?.limits ?? []
  const names = new Set(checked.filter(({ key }) => keys.includes(key)).map(({ ownerName }) => ownerName))
  return { kind: 'fabricator', name: names.size === 0 ? 'a fabricator' : [...names].join(', ') }
}

/** Nothing is copied that the owner's limit may have gone into: not the sentence, the margin or the range. */
function withhold(outcome: Outcome, counterpart: Outcome | undefined, owner: LimitOwner): Outcome {
  const { places } = outcome
  switch (outcome.kind) {
    case 'decided': {
      const band = findMarginBand(outcome)
      const summary = `${capitalise(BAND_WORDS[band])} of ${owner.name}, which is not shown.`
      const value = findOwnValue(outcome, counterpart)
      return { kind: 'withheld', verdict: outcome.verdict, band, value, owner, places, summary }
    }
    // Words of the design: no limit went into them.
    case 'said':
    case 'withheld':
      return outcome
    case 'cannot-tell': {
      const because = 'no model of the program covers this case'
      const decidedBy = `ask ${owner.name}`
      return { kind: 'cannot-tell', because, decidedBy, places, summary: `Cannot be told: ${because}; ${decidedBy}.` }
    }
    case 'not-computed': {
      const labels = outcome.missing.map(({ label }) => label).join(', ')
      return { kind: 'not-computed', missing: outcome.missing, places, summary: `Not computed: ${labels}.` }
    }
    case 'not-applicable':
      return { kind: 'not-applicable', places, summary: `Not applicable under a limit of ${owner.name}.` }
  }
}

/** The value, where it is the same under other limits: then it is the design's own and says nothing of this one. */
function findOwnValue(outcome: DecidedOutcome, counterpart: Outcome | undefined): Quantity | null {
  return counterpart?.kind === 'decided' &&
    isSame(counterpart.value, outcome.value) &&
    isSame(counterpart.places, outcome.places)
    ? counterpart.value
    : null
}

export const BAND_WORDS: Readonly<Record<MarginBand, string>> = {
  'well-inside': 'well inside the limit',
  'near-limit': 'near the limit',
  outside: 'outside the limit',
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)

/**
 * Results of a design that nobody saved. They are made without the limits that are not shown, so the items that rest on
 * these say that they are checked when saved.
 */
export function markCheckedWhenSaved(
  evaluation: Evaluation,
  items: readonly Item[],
  checked: readonly CheckedLimit[],
): Evaluation {
  if (checked.length === 0) return evaluation
  return { ...evaluation, items: keepFollowers(postponeChecked(evaluation.items, items, checked, null)) }
}

/**
 * The same of a draft.
 *
 * @param recorded  results of this very design, where it is the saved one: items that rest on such limits are then taken from there
 */
export function markDraftCheckedWhenSaved(
  draft: DraftEvaluation,
  items: readonly Item[],
  checked: readonly CheckedLimit[],
  recorded: DraftEvaluation | null = null,
): DraftEvaluation {
  if (checked.length === 0) return draft
  return { ...draft, items: postponeChecked(draft.items, items, checked, recorded) }
}

function postponeChecked<Result extends DraftItemResult>(
  results: readonly Result[],
  items: readonly Item[],
  checked: readonly CheckedLimit[],
  recorded: { readonly items: readonly Result[] } | null,
): Result[] {
  const definitions = new Map(items.map((item) => [item.id, item]))
  const known = new Map(recorded?.items.map((item) => [item.itemId, item]))
  return results.map((result) => {
    const definition = definitions.get(result.itemId)
    if (definition === undefined || !restsOnAny(definition, checked)) return result
    return known.get(result.itemId) ?? postpone(result, definition, checked)
  })
}

/** Does the item's check ask for a limit that is not shown? */
export function restsOnAny(definition: Pick<Item, 'limits'>, checked: readonly CheckedLimit[]): boolean {
  const keys: readonly string[] = definition.limits
  return checked.some(({ key }) => keys.includes(key))
}

function postpone<Result extends DraftItemResult>(
  item: Result,
  definition: Item,
  checked: readonly CheckedLimit[],
): Result {
  if (item.verdict === 'not-applicable') return item
  const summary = `Checked when saved: ${findOwner(definition, checked).name} checks this against a limit that is not shown.`
  const outcomes = item.outcomes.map(
    (outcome): Outcome =>
      outcome.kind === 'decided' ? { kind: 'not-computed', missing: [], places: outcome.places, summary } : outcome,
  )
  return { ...item, verdict: 'not-computed', outcomes, headline: summary }
}
