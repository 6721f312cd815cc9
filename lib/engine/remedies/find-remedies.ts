import type { Design } from '../design'
import { ENGINE_VERSION } from '../version'
import { describeArrival, findLeads } from './arrival'
import { assessBend, type BendAssessment } from './assess'
import { describeLeafSteps } from './leaf-steps'
import { drawOnPlan, takeOffPlan } from './on-plan'
import type { RemedyOptions } from './options'
import { makePatch } from './patch'
import { compareRemedies, dropDominated, takeBest } from './ranking'
import type { Remedy, RemedyChange, RemedyReport, RemedyState } from './remedy'
import { isArrival, type RemedyProgress, type SearchResult, searchSets } from './search'
import { type Trial, toAssessOptions } from './trial'

/**
 * The whole search at once: `searchRemedies`, drawn to its end.
 *
 * @public  for programs that have nothing else to do meanwhile, such as the measurements
 */
export function findRemedies(design: Design, bendId: string, options: RemedyOptions = {}): RemedyReport {
  const search = searchRemedies(design, bendId, options)
  for (;;) {
    const step = search.next()
    if (step.done === true) return step.value
    options.onProgress?.(step.value.doneFraction)
  }
}

/**
 * Of sets that do not meet, the best ones are listed: nobody reads seventy, and each is drawn and held against the whole checklist. Our choice; every single change
 * of the usual bend is among them.
 */
const MOST_LISTED_SHORT = 24

const NOTHING_TRIED: SearchResult = {
  trials: [],
  tried: { alone: 0, inPairs: 0, inLargerSets: 0 },
  search: { completeUpTo: 0, deepest: 0, isStopped: false },
}

/**
 * Changes that the trade would try on a bend, alone, in pairs, and in larger sets as long as no allowed one meets; each computed as the
 * full evaluation would, with what it does to strain, radius, life, thickness and moment. Those that another one beats on every count are
 * left out, and of those that do not meet all but the best; those that a stated need forbids are marked with the need.
 *
 * Between designs it yields how far it is, so that it can be stopped: `next(true)` returns the report of what was found so far.
 *
 * @param design  as parseDesign gave it; it is not changed, and shares its parts with what is tried
 * @returns remedies best first, each as a patch on the design document and the patch that takes it back
 * @throws  RangeError where the design has no such bend
 * Source   each figure as the evaluation names it; steps of foils, films and shares of copper are common practice
 */
export function* searchRemedies(
  design: Design,
  bendId: string,
  options: RemedyOptions = {},
): Generator<RemedyProgress, RemedyReport, boolean | undefined> {
  const basis = assessBend(design, bendId, toAssessOptions(options))
  if (basis === null) throw new RangeError(`no bend "${bendId}" in this design`)
  const obstacle = explainNotTried(basis)
  const searched = takeOffPlan(design)
  const onNumbers = searched === design ? basis : assessBend(searched, bendId, toAssessOptions(options))
  const before = withCost(basis.state, design, options)
  const beforeSearched = withCost(basis.state, searched, options)
  const drawnById = new Map<string, Trial>()
  const draw = (trial: Trial): Trial => {
    const drawn = drawnById.get(trial.id) ?? drawOnPlan(trial, basis, searched, options)
    drawnById.set(trial.id, drawn)
    return drawn
  }
  /** Whether a change helps is no question of cost: only what helps is priced. */
  const listHelping = (trials: readonly Trial[]): readonly Trial[] =>
    trials
      .filter((trial) => doesHelp(trial, basis.state))
      .map((trial) => ({ ...trial, after: withCost(trial.after, trial.edited, options) }))
  const makeReport = (
    { tried, search }: SearchResult,
    kept: readonly Trial[],
    helping: readonly Trial[],
    notTried: string | null,
  ): RemedyReport => ({
    engineVersion: ENGINE_VERSION,
    bendId,
    bendName: basis.result.name,
    before,
    arrival: describeArrival(before, kept, helping),
    remedies: describeTrials(kept, basis, options),
    tried,
    search,
    leftOut: tried.alone + tried.inPairs + tried.inLargerSets - kept.length,
    notTried,
  })
  /** Sets of more changes cannot lead, and what beats a set that arrives arrives too: nothing that is still to come changes it. */
  const reportLead = (arrived: SearchResult): RemedyReport | null => {
    const listed = selectListed(listHelping(arrived.trials), beforeSearched).map(draw)
    const leads = findLeads(before, judgeLeads(listed, before, options, 'leads-alone')).filter(isArrival)
    return leads.length === 0 ? null : makeReport(arrived, leads, leads, null)
  }
  const found =
    obstacle === null && onNumbers !== null
      ? yield* tellLead(searchSets(onNumbers, options), reportLead)
      : NOTHING_TRIED
  const notTried =
    obstacle === null && found.tried.alone === 0 && basis.state.allowablePct === null
      ? 'No allowable strain is known for the copper in this use, and no change here takes it out of the bend.'
      : obstacle
  const helping = listHelping(found.trials)
  const listed = selectListed(helping, beforeSearched)
  const kept = judgeLeads(basis.design === searched ? listed : listed.map(draw), before, options, 'all-that-arrive')
  return makeReport(found, kept, withJudged(helping, listed, kept), notTried)
}

/** The progress of the search, with the report of what leads as soon as it arrives. */
function* tellLead(
  sets: ReturnType<typeof searchSets>,
  reportLead: (arrived: SearchResult) => RemedyReport | null,
): Generator<RemedyProgress, SearchResult, boolean | undefined> {
  let step = sets.next()
  while (step.done !== true) {
    const { arrived, ...progress } = step.value
    const lead = arrived === undefined ? null : reportLead(arrived)
    step = sets.next(yield lead === null ? progress : { ...progress, lead })
  }
  return step.value
}

/**
 * The best of those that arrive, and of those that are no larger, is judged to the end, and again where another then is the best; where none arrives, the nearest.
 * Of all that arrive, the others are judged on the plan.
 */
function judgeLeads(
  drawn: readonly Trial[],
  before: RemedyState,
  options: RemedyOptions,
  which: 'leads-alone' | 'all-that-arrive',
): Trial[] {
  let trials = drawn.toSorted(compareRemedies)
  const judgeOn = (due: Trial): void => {
    const judged = due.judge?.() ?? null
    const kept =
      judged === null || !doesHelp(judged, before)
        ? []
        : [{ ...judged, after: withCost(judged.after, judged.edited, options) }]
    trials = trials.flatMap((trial) => (trial === due ? kept : [trial])).sort(compareRemedies)
  }
  for (;;) {
    const onNumbers =
      which === 'leads-alone' ? undefined : trials.find((trial) => trial.judged === 'on-numbers' && isArrival(trial))
    const due = onNumbers ?? findLeads(before, trials).find(({ judged }) => judged !== 'folded')
    if (due?.judge === undefined) return trials
    judgeOn(due)
  }
}

/** All that meet, and the best of the rest; none that another one beats on every count. */
function selectListed(helping: readonly Trial[], before: RemedyState): Trial[] {
  const unbeaten = dropDominated(helping, before)
  const short = takeBest(
    unbeaten.filter(({ after }) => after.verdict !== 'meets'),
    MOST_LISTED_SHORT,
  )
  return unbeaten.filter((trial) => trial.after.verdict === 'meets' || short.includes(trial))
}

/** All that help, those that were listed by the judgment on the plan. */
function withJudged(helping: readonly Trial[], listed: readonly Trial[], kept: readonly Trial[]): readonly Trial[] {
  const ids = new Set(listed.map(({ id }) => id))
  return [...helping.filter(({ id }) => !ids.has(id)), ...kept]
}

/**
 * Where a bend does not meet, a remedy brings the strain nearer to its allowable, or rolled-annealed foil into a dynamic bend, whatever
 * the relation says of the foil that it replaces. Cut-outs alone are there for a bend that
 * is too stiff, and stay. Where it meets, whatever is better on some count may be of interest.
 */
function doesHelp({ changes, after }: Trial, before: RemedyState): boolean {
  if (before.verdict === 'meets') return true
  if (changes.length === 1 && changes[0]?.family === 'cut-outs') return true
  if (after.unprovenFoilLayers < before.unprovenFoilLayers) return true
  return (after.marginFraction ?? 0) > (before.marginFraction ?? 0)
}

function explainNotTried({ result }: BendAssessment): string | null {
  const { missing, conductors } = result
  // Copper without an allowable is no obstacle: a change may take it out of the bend.
  const isInTheWay = conductors.length === 0 || missing.some(({ path }) => path[0] === 'bends')
  if (missing.length > 0 && isInTheWay) return `Missing: ${missing.map(({ label }) => label).join(', ')}.`
  return conductors.length === 0 ? 'No conductor runs through this bend.' : null
}

function withCost(state: RemedyState, design: Design, { costOf }: RemedyOptions): RemedyState {
  return costOf === undefined ? state : { ...state, costIndex: costOf(design) }
}

/** What panels and the shelf say is asked once for the design, and for each remedy that is kept. */
function describeTrials(kept: readonly Trial[], { design, result }: BendAssessment, options: RemedyOptions): Remedy[] {
  const { partsPerPanelOf, materialsOf } = options
  const before = partsPerPanelOf?.(design) ?? null
  const present = new Set(materialsOf?.(design).map(({ name }) => name))
  return kept.map((trial) => {
    const after = before === null ? null : (partsPerPanelOf?.(trial.edited) ?? null)
    return {
      ...describeTrial(trial, design, result.zoneId),
      partsPerPanel: before === null || after === null ? null : { before, after },
      offShelf: (materialsOf?.(trial.edited) ?? []).filter(
        ({ name, state }) => state !== 'on-shelf' && !present.has(name),
      ),
    }
  })
}

function describeTrial(
  { id, changes, edited, after, forbiddenBy, worsens, findMoved, judged }: Trial,
  design: Design,
  zoneId: string,
): Omit<Remedy, 'partsPerPanel' | 'offShelf'> {
  return {
    id,
    changes: changes.map(
      ({ id: changeId, family, title, detail, cautions }): RemedyChange => ({
        id: changeId,
        family,
        title,
        detail: family === 'unbonded-leaves' ? `${detail}, ${describeLeafSteps(edited, zoneId)}` : detail,
        cautions,
      }),
    ),
    patch: makePatch(design, edited),
    undoPatch: makePatch(edited, design),
    after,
    forbiddenBy,
    worsens,
    movedItems: findMoved(),
    judged,
  }
}
