import type { BendAssessment } from './assess'
import { RANKED_FAMILIES } from './families'
import type { RemedyOptions } from './options'
import type { ForbiddenNeed, RemedySearch, RemedyState } from './remedy'
import { makeSubject, makeTrial, type Trial, type Tried } from './trial'

/** Sets of more changes are another design. Our choice. */
const MOST_CHANGES = 4
/**
 * Sets that a further change is tried on, the nearest ones, once pairs are through: it keeps the search to about a thousand designs.
 * Our choice; sets of three are complete where no more pairs than this are left to continue.
 */
const MOST_CONTINUED = 40
/** Of larger sets that do not meet, the nearest ones are worth showing. */
const MOST_NEAREST = 10

/** Sums of lengths and widths differ by their last binary digits. */
const LEAST_GROWTH_MM = 1e-6

/** A further change cannot heal these: sets with such a change would only repeat the mark. */
const LASTING_NEEDS: ReadonlySet<ForbiddenNeed['kind']> = new Set([
  'room',
  'crossing-conductors',
  'impedance',
  'material',
  'operating-temperature',
  'other-bend',
  'pull',
  'twist',
])

/** Between two designs that are tried: the caller, who draws the next step, decides whether the search goes on. */
export interface RemedyProgress {
  /** Changes in the sets that are tried now. */
  readonly changeCount: number
  readonly triedCount: number
  /** Share of the longest search, 0 to 1: one that finds a set that meets ends sooner. */
  readonly doneFraction: number
}

export interface SearchResult {
  /** Those of larger sets alone that meet or come nearest. */
  readonly trials: readonly Trial[]
  readonly tried: { readonly alone: number; readonly inPairs: number; readonly inLargerSets: number }
  readonly search: RemedySearch
}

interface Node extends Tried {
  /** Rank of the last change: the next one is of the same family or a later one. */
  readonly rank: number
}

/**
 * Sets of changes, smallest first: alone, in pairs, and larger ones as long as no allowed set meets.
 *
 * @returns draw steps until it is done; `next(true)` stops it, and what was found so far is returned
 */
export function* searchSets(
  basis: BendAssessment,
  options: RemedyOptions,
): Generator<RemedyProgress, SearchResult, boolean | undefined> {
  const mostChanges = Math.min(MOST_CHANGES, options.mostChanges ?? MOST_CHANGES)
  const kept: Trial[] = []
  const counts = [0, 0, 0]
  let triedCount = 0
  let completeUpTo = 0
  let deepest = 0
  let isComplete = true
  let parents: readonly Node[] = [makeRoot(basis)]
  const finish = (isStopped: boolean): SearchResult => {
    const [alone = 0, inPairs = 0, inLargerSets = 0] = counts
    return {
      trials: kept,
      tried: { alone, inPairs, inLargerSets },
      search: { completeUpTo, deepest, isStopped },
    }
  }
  for (let changeCount = 1; changeCount <= mostChanges && parents.length > 0; changeCount += 1) {
    const children: Node[] = []
    for (const [at, parent] of parents.entries()) {
      const doneFraction = (changeCount - 1 + at / parents.length) / mostChanges
      const doStop = yield { changeCount, triedCount, doneFraction }
      if (doStop === true) {
        kept.push(...selectShown(children, changeCount, basis.state))
        return finish(true)
      }
      const made = expand(basis, parent, options)
      deepest = Math.max(deepest, made.length > 0 ? changeCount : 0)
      triedCount += made.length
      const place = Math.min(changeCount, counts.length) - 1
      counts[place] = (counts[place] ?? 0) + made.length
      children.push(...made)
    }
    if (isComplete) completeUpTo = changeCount
    kept.push(...selectShown(children, changeCount, basis.state))
    // A set that makes the part larger may not be what anybody wants: one that does not is looked for on.
    const isFound = kept.some((trial) => isArrival(trial) && !doesGrow(trial.after, basis.state))
    if (changeCount >= 2 && (isFound || basis.state.verdict === 'meets')) break
    const continued = children.filter(
      ({ trial }) =>
        !trial.forbiddenBy.some(({ kind }) => LASTING_NEEDS.has(kind)) && (changeCount === 1 || !isArrival(trial)),
    )
    // What would meet but for a need that another change may heal has few changes left to try: it is continued beside the nearest ones.
    const healable = continued.filter(({ trial }) => trial.after.verdict === 'meets')
    const others = continued.filter(({ trial }) => trial.after.verdict !== 'meets')
    parents = changeCount === 1 ? continued : [...healable, ...takeNearest(others, MOST_CONTINUED)]
    if (parents.length < continued.length) isComplete = false
  }
  return finish(false)
}

function makeRoot(assessment: BendAssessment): Node {
  const trial: Trial = {
    id: '',
    changes: [],
    changeCount: 0,
    edited: assessment.design,
    after: assessment.state,
    forbiddenBy: [],
    worsens: [],
  }
  return { trial, assessment, rank: 0 }
}

/** The next change is proposed afresh on the design that the ones before it leave: it may be another, or not be there. */
function expand(basis: BendAssessment, { trial, assessment, rank }: Node, options: RemedyOptions): Node[] {
  const subject = makeSubject(assessment, options)
  if (subject === null) return []
  const last = trial.changes.at(-1)
  const touched = new Set(trial.changes.flatMap(({ touches }) => touches))
  const nodes: Node[] = []
  for (const { family, rank: nextRank, propose } of RANKED_FAMILIES) {
    if (nextRank < rank || (options.leftOutFamilies ?? []).includes(family)) continue
    for (const next of propose(subject)) {
      if (last !== undefined && nextRank === rank && next.id <= last.id) continue
      if (next.touches.some((key) => touched.has(key))) continue
      const made = makeTrial(basis, assessment, [...trial.changes, next], options)
      if (made !== null) nodes.push({ ...made, rank: nextRank })
    }
  }
  return nodes
}

/** The bend meets, nothing stands against it, and no other bend pays for it. */
export function isArrival({ after, forbiddenBy, worsens }: Trial): boolean {
  return after.verdict === 'meets' && forbiddenBy.length === 0 && worsens.length === 0
}

/** Takes more length or width than the part has now. */
export function doesGrow(after: RemedyState, before: RemedyState): boolean {
  return after.planSizeMm > before.planSizeMm + LEAST_GROWTH_MM
}

function takeNearest(nodes: readonly Node[], most: number): readonly Node[] {
  return nodes.toSorted(compareNearness).slice(0, most)
}

function compareNearness({ trial: a }: Node, { trial: b }: Node): number {
  return (b.after.marginFraction ?? -Infinity) - (a.after.marginFraction ?? -Infinity) || (a.id < b.id ? -1 : 1)
}

/** Alone and in pairs all are compared; of larger sets those that meet, and the nearest of the rest. */
function selectShown(children: readonly Node[], changeCount: number, before: RemedyState): Trial[] {
  if (changeCount <= 2) return children.map(({ trial }) => trial)
  if (before.verdict === 'meets') return []
  const meeting = children.filter(({ trial }) => trial.after.verdict === 'meets')
  const rest = children.filter(({ trial }) => trial.after.verdict !== 'meets' && trial.forbiddenBy.length === 0)
  return [...meeting, ...takeNearest(rest, MOST_NEAREST)].map(({ trial }) => trial)
}
