import { computeCopper } from '../assembly'
import { type BendAssessment, countUnprovenFoils, findMarginFraction } from './assess'
import { RANKED_FAMILIES } from './families'
import type { RemedyOptions } from './options'
import type { ForbiddenNeed, RemedyReport, RemedySearch, RemedyState } from './remedy'
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

/** A margin below this is surely none, whatever the last digits. */
const MEETS_SLACK = 1e-6
/** Sets that are worked out between two looks at whether to stop. */
const STEPS_APART = 8

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
  /** The report of what leads, once that is certain and while the search goes on for more. It lists that alone. */
  readonly lead?: RemedyReport
}

/** `arrived`: after the first level that has sets which arrive, where the search goes on, those sets. */
export interface SetProgress extends RemedyProgress {
  readonly arrived?: SearchResult
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

/** A set that is proposed and not worked out yet. */
interface Pending {
  readonly parent: Node
  readonly changes: Trial['changes']
  readonly rank: number
}

/** One whose bend was worked out by itself, and nothing else of the design. */
interface Bounded extends Pending {
  /** The margin that it comes to; infinite where the bend alone does not tell. */
  readonly margin: number
  /** May be listed, by what the bend alone tells. */
  readonly mayHelp: boolean
}

/** Null where it was stopped. */
type Steps<Result> = Generator<RemedyProgress, Result | null, boolean | undefined>

/**
 * Sets of changes, smallest first: alone, in pairs, and larger ones as long as no allowed set meets. Of sets of several changes the bend is worked out first, by
 * itself; the whole design follows, the nearest first, for those that may be listed or continued. What comes out is the same as if all were worked out whole.
 *
 * @returns draw steps until it is done; `next(true)` stops it, and what was found so far is returned
 */
export function* searchSets(
  basis: BendAssessment,
  options: RemedyOptions,
): Generator<SetProgress, SearchResult, boolean | undefined> {
  const mostChanges = Math.min(MOST_CHANGES, options.mostChanges ?? MOST_CHANGES)
  const kept: Trial[][] = []
  /** Pairs that neither meet nor lead on: what leads does not wait for them. */
  const deferred: Bounded[] = []
  const counts = [0, 0, 0]
  let completeUpTo = 0
  let deepest = 0
  let isComplete = true
  let hasArrived = false
  let parents: readonly Node[] = [makeRoot(basis)]
  const finish = (isStopped: boolean): SearchResult => {
    const [alone = 0, inPairs = 0, inLargerSets = 0] = counts
    return {
      trials: kept.flat(),
      tried: { alone, inPairs, inLargerSets },
      search: { completeUpTo, deepest, isStopped },
    }
  }
  const tellOf = (changeCount: number, share: number): RemedyProgress => ({
    changeCount,
    triedCount: counts.reduce((sum, count) => sum + count, 0),
    doneFraction: (changeCount - 1 + share) / mostChanges,
  })
  for (let changeCount = 1; changeCount <= mostChanges && parents.length > 0; changeCount += 1) {
    const children: Node[] = []
    const level: Level = {
      basis,
      options,
      parents,
      children,
      deferred,
      areAllListed: changeCount <= 2,
      isLast: changeCount === mostChanges,
      count: (by) => {
        const place = Math.min(changeCount, counts.length) - 1
        counts[place] = (counts[place] ?? 0) + by
        if (by > 0) deepest = changeCount
      },
      tell: (share) => tellOf(changeCount, share),
    }
    const isThrough = yield* changeCount === 1 ? tryAll(level) : tryNearest(level)
    const shown = selectShown(children, changeCount, basis.state)
    kept.push(shown)
    if (isThrough === null) return finish(true)
    if (isComplete && deferred.length === 0) completeUpTo = changeCount
    // A set that makes the part larger may not be what anybody wants: one that does not is looked for on.
    const isFound = kept.flat().some((trial) => isArrival(trial) && !doesGrow(trial.after, basis.state))
    const isLast = (changeCount >= 2 && (isFound || basis.state.verdict === 'meets')) || changeCount === mostChanges
    const arrived = children.map(({ trial }) => trial).filter(isArrival)
    const isNews = !hasArrived && arrived.length > 0 && basis.state.verdict !== 'meets'
    if (isNews && !(isLast && deferred.length === 0)) {
      hasArrived = true
      if ((yield { ...level.tell(1), arrived: { ...finish(false), trials: arrived } }) === true) return finish(true)
    }
    if (isLast) break
    const continued = children.filter((node) => mayContinue(node) && (changeCount === 1 || !isArrival(node.trial)))
    // What would meet but for a need that another change may heal has few changes left to try: it is continued beside the nearest ones.
    const healable = continued.filter(({ trial }) => trial.after.verdict === 'meets')
    const others = continued.filter(({ trial }) => trial.after.verdict !== 'meets')
    parents = changeCount === 1 ? continued : [...healable, ...takeNearest(others, MOST_CONTINUED)]
    if (parents.length < continued.length || deferred.length > 0 || changeCount > 2) isComplete = false
  }
  const pairs = kept[1] ?? []
  for (const [at, pending] of deferred.entries()) {
    if (at % STEPS_APART === 0 && (yield tellOf(deepest, at / deferred.length)) === true) return finish(true)
    const made = workOut(basis, pending, options)
    if (made === null) counts[1] = (counts[1] ?? 0) - 1
    else pairs.push(made.trial)
  }
  completeUpTo = Math.max(completeUpTo, deferred.length === 0 ? 0 : 2)
  return finish(false)
}

interface Level {
  readonly basis: BendAssessment
  readonly options: RemedyOptions
  readonly parents: readonly Node[]
  /** Receives the sets that are worked out. */
  readonly children: Node[]
  /** Receives those that are listed for what they help, and are neither continued nor among what meets. */
  readonly deferred: Bounded[]
  /** Whatever helps is listed: otherwise what meets, and the nearest. */
  readonly areAllListed: boolean
  /** No set is continued from here. */
  readonly isLast: boolean
  readonly count: (by: number) => void
  readonly tell: (share: number) => RemedyProgress
}

function* tryAll({ basis, options, parents, children, count, tell }: Level): Steps<true> {
  for (const [at, parent] of parents.entries()) {
    if ((yield tell(at / parents.length)) === true) return null
    const made = propose(parent, options).flatMap((pending) => workOut(basis, pending, options) ?? [])
    count(made.length)
    children.push(...made)
  }
  return true
}

/** The bends of all sets first, which takes about half of the time. */
function* tryNearest(level: Level): Steps<true> {
  const { basis, options, parents, children, deferred, areAllListed, isLast, count, tell } = level
  const bounded: Bounded[] = []
  for (const [at, parent] of parents.entries()) {
    if ((yield tell(at / parents.length / 2)) === true) return null
    const found = propose(parent, options).flatMap((pending) => lookAtBend(basis, pending, options) ?? [])
    count(found.length)
    bounded.push(...found)
  }
  bounded.sort((a, b) => b.margin - a.margin)
  const wanted = [
    { most: areAllListed ? 0 : MOST_NEAREST, isWanted: ({ trial }: Node) => trial.forbiddenBy.length === 0 },
    { most: isLast ? 0 : MOST_CONTINUED, isWanted: mayContinue },
  ]
  /** What is left has less margin: it does not meet, and is none of the nearest. */
  const isBeyond = (margin: number): boolean =>
    margin < -MEETS_SLACK &&
    wanted.every(({ most, isWanted }) => {
      const nearer = children.filter(
        (node) => node.trial.after.verdict !== 'meets' && isWanted(node) && marginOf(node) > margin,
      )
      return nearer.length >= most
    })
  let areNearestFound = false
  for (const [at, pending] of bounded.entries()) {
    areNearestFound ||= isBeyond(pending.margin)
    if (areNearestFound) {
      if (areAllListed && pending.mayHelp) deferred.push(pending)
      continue
    }
    if (at % STEPS_APART === 0 && (yield tell(0.5 + at / bounded.length / 2)) === true) return null
    const made = workOut(basis, pending, options)
    if (made === null) count(-1)
    else children.push(made)
  }
  return true
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
    findMoved: () => [],
    countBreaks: () => 0,
    judged: 'folded',
  }
  return { trial, assessment, rank: 0 }
}

/** The next change is proposed afresh on the design that the ones before it leave: it may be another, or not be there. */
function propose(parent: Node, options: RemedyOptions): Pending[] {
  const { trial, assessment, rank } = parent
  const subject = makeSubject(assessment, options)
  if (subject === null) return []
  const last = trial.changes.at(-1)
  const touched = new Set(trial.changes.flatMap(({ touches }) => touches))
  const found: Pending[] = []
  for (const { family, rank: nextRank, propose: proposeOf } of RANKED_FAMILIES) {
    if (nextRank < rank || (options.leftOutFamilies ?? []).includes(family)) continue
    for (const next of proposeOf(subject)) {
      if (last !== undefined && nextRank === rank && next.id <= last.id) continue
      if (next.touches.some((key) => touched.has(key))) continue
      found.push({ parent, changes: [...trial.changes, next], rank: nextRank })
    }
  }
  return found
}

function workOut(basis: BendAssessment, { parent, changes, rank }: Pending, options: RemedyOptions): Node | null {
  const made = makeTrial(basis, parent.assessment, changes, options)
  return made === null ? null : { ...made, rank }
}

/** @returns null where no strain is allowed for the copper: such a set is not tried */
function lookAtBend({ result, state }: BendAssessment, pending: Pending, options: RemedyOptions): Bounded | null {
  const edited = pending.changes.at(-1)?.edited
  // Leaves get the lengths that they need when the set is worked out.
  const isOpen = pending.changes.some(({ family }) => family === 'unbonded-leaves')
  const copper = edited === undefined || isOpen ? null : computeCopper(edited, result.bendId, options.testedLives ?? [])
  if (copper === null) return { ...pending, margin: Infinity, mayHelp: true }
  const margin = findMarginFraction(copper)
  if (margin === null) return null
  const mayHelp =
    state.verdict === 'meets' ||
    margin > (state.marginFraction ?? 0) ||
    countUnprovenFoils(copper) < state.unprovenFoilLayers
  return { ...pending, margin, mayHelp }
}

/** Has no need that lasts whatever goes with it. */
const mayContinue = ({ trial }: Node): boolean => !trial.forbiddenBy.some(({ kind }) => LASTING_NEEDS.has(kind))

/** The bend meets, nothing stands against it, and no other bend or item of weight pays for it. */
export function isArrival(trial: Trial): boolean {
  return trial.after.verdict === 'meets' && isClean(trial)
}

/** Allowed to lead: no need forbids it, no other bend gets worse, and no blocking or major item comes to fail. */
export function isClean({ forbiddenBy, worsens, countBreaks }: Trial): boolean {
  return forbiddenBy.length === 0 && worsens.length === 0 && countBreaks() === 0
}

/** Takes more length or width than the part has now. */
export function doesGrow(after: RemedyState, before: RemedyState): boolean {
  return after.planSizeMm > before.planSizeMm + LEAST_GROWTH_MM
}

function takeNearest(nodes: readonly Node[], most: number): readonly Node[] {
  return nodes.toSorted(compareNearness).slice(0, most)
}

function compareNearness(a: Node, b: Node): number {
  return marginOf(b) - marginOf(a) || (a.trial.id < b.trial.id ? -1 : 1)
}

const marginOf = ({ trial }: Node): number => trial.after.marginFraction ?? -Infinity

/** Alone and in pairs all are compared; of larger sets those that meet, and the nearest of the rest. */
function selectShown(children: readonly Node[], changeCount: number, before: RemedyState): Trial[] {
  if (changeCount <= 2) return children.map(({ trial }) => trial)
  if (before.verdict === 'meets') return []
  const meeting = children.filter(({ trial }) => trial.after.verdict === 'meets')
  const rest = children.filter(({ trial }) => trial.after.verdict !== 'meets' && trial.forbiddenBy.length === 0)
  return [...meeting, ...takeNearest(rest, MOST_NEAREST)].map(({ trial }) => trial)
}
