import type { EvaluationContext } from '../context'
import type { Design } from '../design'
import { getOutcomeVerdict, type ItemResult, type Outcome, type Verdict } from '../results'
import type { ItemDefinition } from './define-item'
import { evaluateItem } from './evaluate-catalogue'
import { type Follower, listRootsOf, type Root } from './roots'

/** How bad; what is 0 needs no cause. What nobody can tell follows from nothing: it is asked for by itself. */
const BADNESS: Readonly<Record<Verdict, number>> = {
  fails: 2,
  'thin-margin': 1,
  meets: 0,
  'not-applicable': 0,
  'cannot-tell': Number.POSITIVE_INFINITY,
  'not-computed': Number.POSITIVE_INFINITY,
}

const badnessOf = (outcome: Outcome): number => BADNESS[getOutcomeVerdict(outcome)]

interface Evaluated {
  readonly context: EvaluationContext
  readonly items: ReadonlyMap<string, ItemDefinition>
  readonly results: ReadonlyMap<string, ItemResult>
  /** The same with a design in which a cause is gone, under the same limits. */
  readonly evaluateWith: (design: Design) => EvaluationContext
  /** Designs with the cause of a root gone at the places of its outcomes, by the root and those outcomes. */
  readonly mended: Map<string, readonly Mended[]>
}

/** One way in which a cause is gone. It is assembled, and its items are evaluated, when first asked for: most outcomes have their answer before the last way. */
interface Mended {
  readonly outcomesOf: (item: ItemDefinition) => readonly Outcome[]
}

function makeMended(design: Design, evaluateWith: Evaluated['evaluateWith']): Mended {
  let context: EvaluationContext | null = null
  const known = new Map<string, readonly Outcome[]>()
  return {
    outcomesOf: (item) => {
      const outcomes = known.get(item.id)
      if (outcomes !== undefined) return outcomes
      context ??= evaluateWith(design)
      const found = evaluateItem(item, context).outcomes
      known.set(item.id, found)
      return found
    },
  }
}

/**
 * Marks the items that follow from another. An item follows where each outcome that makes its verdict has a root at its place that is at least as bad and
 * stands by itself; one that fails somewhere by itself, or has an outcome that nobody can tell, stands.
 */
export function markFollowers(
  results: readonly ItemResult[],
  items: readonly ItemDefinition[],
  context: EvaluationContext,
  evaluateWith: (design: Design) => EvaluationContext,
): ItemResult[] {
  const evaluated: Evaluated = {
    context,
    items: new Map(items.map((item) => [item.id, item])),
    results: new Map(results.map((result) => [result.itemId, result])),
    evaluateWith,
    mended: new Map(),
  }
  const found = new Map<string, readonly string[]>()
  return results.map((result) => {
    const followsFrom = findRoots(result.itemId, evaluated, found)
    return followsFrom.length === 0 ? result : { ...result, followsFrom }
  })
}

const findConcern = (verdict: ItemResult['verdict']): number =>
  verdict === 'fails' || verdict === 'thin-margin' ? BADNESS[verdict] : 0

/** Items that this one follows from, in the order of its outcomes; empty where it stands by itself. */
function findRoots(itemId: string, evaluated: Evaluated, found: Map<string, readonly string[]>): readonly string[] {
  const known = found.get(itemId)
  if (known !== undefined) return known
  const result = evaluated.results.get(itemId)
  const roots = new Set<string>()
  const worst = result === undefined ? 0 : findConcern(result.verdict)
  for (const outcome of worst > 0 ? (result?.outcomes ?? []) : []) {
    // A thin margin of its own does not make a failure its own.
    if (badnessOf(outcome) < worst) continue
    const root = listRootsOf(itemId).find(
      (each) => findRoots(each.itemId, evaluated, found).length === 0 && isBrought(each, itemId, outcome, evaluated),
    )
    if (root === undefined) {
      roots.clear()
      break
    }
    roots.add(root.itemId)
  }
  const listed = [...roots]
  found.set(itemId, listed)
  return listed
}

/** Does the root fail at the place of this outcome, and with it gone, does the outcome hold? */
function isBrought(root: Root, itemId: string, outcome: Outcome, evaluated: Evaluated): boolean {
  const follower = root.followers.find((each) => each.itemId === itemId)
  const result = evaluated.results.get(root.itemId)
  if (follower === undefined || result === undefined) return false
  const bad = result.outcomes.filter((other) => {
    const badness = badnessOf(other)
    return Number.isFinite(badness) && badness >= badnessOf(outcome) && badness > 0
  })
  if (bad.length === 0) return false
  const { context } = evaluated
  const isThere =
    follower.isFrom === undefined
      ? isAtPlaceOf(follower, outcome, bad, context)
      : follower.isFrom(context, outcome, bad)
  return isThere && (root.mend === undefined || goesWith(root, bad, itemId, outcome, evaluated))
}

function goesWith(
  root: Root,
  bad: readonly Outcome[],
  itemId: string,
  outcome: Outcome,
  evaluated: Evaluated,
): boolean {
  const item = evaluated.items.get(itemId)
  if (item === undefined || root.mend === undefined) return false
  // Of the root's outcomes, `bad` are those at least as bad: how many there are says which.
  const key = `${root.itemId} ${bad.length}`
  let ways = evaluated.mended.get(key)
  if (ways === undefined) {
    ways = root.mend(evaluated.context, bad).map((design) => makeMended(design, evaluated.evaluateWith))
    evaluated.mended.set(key, ways)
  }
  return ways.some((way) => {
    const after = way.outcomesOf(item).filter((other) => isAbout(outcome, other))
    return after.length > 0 && after.every((other) => badnessOf(other) < badnessOf(outcome))
  })
}

/** Is the later outcome about the same bend, or, where none is named, the same zones and layers? The deciding layer of a bend may be another. */
function isAbout(outcome: Outcome, later: Outcome): boolean {
  const bends = outcome.places.filter(({ kind }) => kind === 'bend')
  const wanted = bends.length > 0 ? bends : outcome.places
  return wanted.every((place) => later.places.some(({ kind, id }) => kind === place.kind && id === place.id))
}

/** Every place of this kind that the outcome names is one that the root fails at. */
function isAtPlaceOf({ at }: Follower, outcome: Outcome, bad: readonly Outcome[], context: EvaluationContext): boolean {
  const ids = listPlaceIds(outcome, at, context)
  const badIds = new Set(bad.flatMap((other) => listPlaceIds(other, at, context)))
  return ids.length > 0 && ids.every((id) => badIds.has(id))
}

function listPlaceIds({ places }: Outcome, at: Follower['at'], { design }: EvaluationContext): string[] {
  return places.flatMap(({ kind, id }) => {
    if (kind === at) return [id]
    if (at !== 'zone' || kind !== 'bend') return []
    return design.bends.find((bend) => bend.id === id)?.zoneId ?? []
  })
}
