import type { LimitOverride } from '../context'
import type { Design } from '../design'
import { ENGINE_VERSION } from '../version'
import { type AssessOptions, assessBend, type BendAssessment } from './assess'
import { RANKED_FAMILIES } from './families'
import { findForbiddenNeeds, isWorseVerdict } from './needs'
import { makePatch } from './patch'
import { compareRemedies, dropDominated, type Ranked } from './ranking'
import type { ForbiddenNeed, NeededMaterial, Remedy, RemedyChange, RemedyReport, RemedyState } from './remedy'
import { type Candidate, describeZone, type Subject } from './subject'

export interface RemedyOptions {
  /** Limits of the workspace and of a fabricator; later ones win. */
  readonly limits?: readonly LimitOverride[]
  /** Materials that the fabricator does not have: changes that need one are marked. */
  readonly unavailableMaterialIds?: readonly string[]
  /** Relative cost of a design; without it cost is not compared. */
  readonly costOf?: (design: Design) => number | null
  /** Parts that one panel holds of a design; asked for the remedies that are kept alone. */
  readonly partsPerPanelOf?: (design: Design) => number | null
  /** Every material of a design as it is bought; asked for the remedies that are kept alone. */
  readonly materialsOf?: (design: Design) => readonly NeededMaterial[]
  /** Told what share of the search is done, 0 to 1, after each change that was tried with all its seconds. May throw to end the search. */
  readonly onProgress?: (fraction: number) => void
}

/** A change, or a pair of them, with what it comes to. */
interface Trial extends Ranked {
  readonly changes: readonly Candidate[]
  readonly edited: Design
  readonly worsens: Remedy['worsens']
}

/** A trial with its whole assessment, which only a second change is built on. */
interface Tried {
  readonly trial: Trial
  readonly assessment: BendAssessment
}

/** A second change cannot heal these: pairs with such a change would only repeat the mark. */
const LASTING_NEEDS: ReadonlySet<ForbiddenNeed['kind']> = new Set([
  'room',
  'crossing-conductors',
  'impedance',
  'material',
  'operating-temperature',
  'zone-length',
])

/**
 * Changes that the trade would try on a bend, alone and in pairs, each computed as the full evaluation would, with what
 * it does to strain, radius, life, thickness and moment. Those that another one beats on every count are left out; those
 * that a stated need forbids are marked with the need.
 *
 * @param design  as parseDesign gave it; it is not changed, and shares its parts with what is tried
 * @returns remedies best first, each as a patch on the design document and the patch that takes it back
 * @throws  RangeError where the design has no such bend
 * Source   each figure as the evaluation names it; steps of foils, films and shares of copper are common practice
 */
export function findRemedies(design: Design, bendId: string, options: RemedyOptions = {}): RemedyReport {
  const basis = assessBend(design, bendId, options)
  if (basis === null) throw new RangeError(`no bend "${bendId}" in this design`)
  const obstacle = explainNotTried(basis)
  const alone = obstacle === null ? tryAlone(basis, options) : []
  const notTried =
    obstacle === null && alone.length === 0 && basis.state.allowablePct === null
      ? 'No allowable strain is known for the copper in this use, and no change here takes it out of the bend.'
      : obstacle
  const inPairs = alone.flatMap((first, at) => {
    const pairs = tryPairs(basis, first, options)
    options.onProgress?.((at + 1) / alone.length)
    return pairs
  })
  const all = [...alone.map(({ trial }) => trial), ...inPairs]
  const before = withCost(basis.state, design, options)
  // Whether a change helps is no question of cost: only what helps is priced.
  const helping = all
    .filter((trial) => doesHelp(trial, basis.state))
    .map((trial) => ({ ...trial, after: withCost(trial.after, trial.edited, options) }))
  const kept = dropDominated(helping, before).sort(compareRemedies)
  return {
    engineVersion: ENGINE_VERSION,
    bendId,
    bendName: basis.result.name,
    before,
    remedies: describeTrials(kept, design, options),
    tried: { alone: alone.length, inPairs: inPairs.length },
    leftOut: all.length - kept.length,
    notTried,
  }
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

interface First extends Tried {
  readonly rank: number
}

function tryAlone(basis: BendAssessment, options: RemedyOptions): First[] {
  const subject = makeSubject(basis, options)
  if (subject === null) return []
  const tried: First[] = []
  for (const { rank, propose } of RANKED_FAMILIES) {
    for (const candidate of propose(subject)) {
      const first = makeTrial(basis, basis, [candidate], options)
      if (first !== null) tried.push({ ...first, rank })
    }
  }
  return tried
}

/** The second change is proposed afresh on the design that the first one leaves: it may be another, or not be there. */
function tryPairs(basis: BendAssessment, { trial, assessment, rank }: First, options: RemedyOptions): Trial[] {
  const [first] = trial.changes
  if (first === undefined || trial.forbiddenBy.some(({ kind }) => LASTING_NEEDS.has(kind))) return []
  const subject = makeSubject(assessment, options)
  if (subject === null) return []
  const pairs: Trial[] = []
  for (const { rank: secondRank, propose } of RANKED_FAMILIES) {
    if (secondRank < rank) continue
    for (const second of propose(subject)) {
      if (secondRank === rank && second.id <= first.id) continue
      if (second.touches.some((key) => first.touches.includes(key))) continue
      const pair = makeTrial(basis, assessment, [first, second], options)
      if (pair !== null) pairs.push(pair.trial)
    }
  }
  return pairs
}

function makeTrial(
  basis: BendAssessment,
  previous: BendAssessment,
  changes: readonly Candidate[],
  options: RemedyOptions,
): Tried | null {
  const edited = changes.at(-1)?.edited
  if (edited === undefined) return null
  const assessment = assessBend(edited, basis.result.bendId, toAssessOptions(options), previous)
  if (assessment === null || assessment.state.allowablePct === null) return null
  const trial: Trial = {
    id: changes.map(({ id }) => id).join('+'),
    changes,
    changeCount: changes.length,
    edited,
    after: assessment.state,
    forbiddenBy: [
      ...changes.flatMap(({ forbiddenBy }) => forbiddenBy),
      ...findForbiddenNeeds(basis, assessment, options.unavailableMaterialIds ?? []),
    ],
    worsens: basis.state.otherBends.flatMap(({ bendId, name, verdict }, at) => {
      const after = assessment.state.otherBends[at]?.verdict ?? verdict
      return isWorseVerdict(verdict, after) ? [{ bendId, name, before: verdict, after }] : []
    }),
  }
  return { trial, assessment }
}

function makeSubject(assessment: BendAssessment, options: RemedyOptions): Subject | null {
  const { design, result, context } = assessment
  const bend = design.bends.find(({ id }) => id === result.bendId)
  const described = bend === undefined ? null : describeZone(design, bend)
  if (bend === undefined || described === null) return null
  return {
    design,
    bend,
    ...described,
    assessment,
    findMaterial: context.findMaterial,
    getLimit: context.getLimit,
    assess: (edited) => assessBend(edited, bend.id, toAssessOptions(options), assessment),
  }
}

function toAssessOptions({ limits }: RemedyOptions): AssessOptions {
  return limits === undefined ? {} : { limits }
}

function withCost(state: RemedyState, design: Design, { costOf }: RemedyOptions): RemedyState {
  return costOf === undefined ? state : { ...state, costIndex: costOf(design) }
}

/** What panels and the shelf say is asked once for the design, and for each remedy that is kept. */
function describeTrials(kept: readonly Trial[], design: Design, options: RemedyOptions): Remedy[] {
  const { partsPerPanelOf, materialsOf } = options
  const before = partsPerPanelOf?.(design) ?? null
  const present = new Set(materialsOf?.(design).map(({ name }) => name))
  return kept.map((trial) => {
    const after = before === null ? null : (partsPerPanelOf?.(trial.edited) ?? null)
    return {
      ...describeTrial(trial, design),
      partsPerPanel: before === null || after === null ? null : { before, after },
      offShelf: (materialsOf?.(trial.edited) ?? []).filter(
        ({ name, state }) => state !== 'on-shelf' && !present.has(name),
      ),
    }
  })
}

function describeTrial(
  { id, changes, edited, after, forbiddenBy, worsens }: Trial,
  design: Design,
): Omit<Remedy, 'partsPerPanel' | 'offShelf'> {
  return {
    id,
    changes: changes.map(
      ({ id: changeId, family, title, detail, cautions }): RemedyChange => ({
        id: changeId,
        family,
        title,
        detail,
        cautions,
      }),
    ),
    patch: makePatch(design, edited),
    undoPatch: makePatch(edited, design),
    after,
    forbiddenBy,
    worsens,
  }
}
