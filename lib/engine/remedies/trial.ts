import type { Design } from '../design'
import { type AssessOptions, assessBend, type BendAssessment } from './assess'
import { fitLeafSteps } from './leaf-steps'
import { countBreaks, findMovedItems, isBreak } from './moves'
import { findForbiddenNeeds, isWorseVerdict } from './needs'
import type { RemedyOptions } from './options'
import type { Ranked } from './ranking'
import type { ForbiddenNeed, Judged, MovedItem, Remedy } from './remedy'
import { type Candidate, describeZone, type Subject } from './subject'

/** A set of changes, with what it comes to. */
export interface Trial extends Ranked {
  readonly changes: readonly Candidate[]
  readonly edited: Design
  readonly worsens: Remedy['worsens']
  /** Items of the checklist that it moves; worked out when first asked for. */
  readonly findMoved: () => readonly MovedItem[]
  readonly judged: Judged
  /** The same, judged one step further, which takes long; null where the bend cannot be assessed there. Absent where nothing is left to judge. */
  readonly judge?: () => Trial | null
}

/** A trial with its whole assessment, which only a further change is built on. */
export interface Tried {
  readonly trial: Trial
  readonly assessment: BendAssessment
}

/**
 * What a design with some changes comes to.
 *
 * @param basis     the design as it is
 * @param previous  the design before the last change: what that left alone is not computed again
 * @returns null where no strain is allowed for the copper
 */
export function makeTrial(
  basis: BendAssessment,
  previous: BendAssessment,
  changes: readonly Candidate[],
  options: RemedyOptions,
): Tried | null {
  const edited = changes.at(-1)?.edited
  if (edited === undefined) return null
  const assessment = assessFitted(basis, previous, changes, edited, options)
  if (assessment === null || assessment.state.allowablePct === null) return null
  return { trial: describeSet(basis, assessment, changes, options), assessment }
}

/** What a set of changes does, and what forbids it. */
export function describeSet(
  basis: BendAssessment,
  assessment: BendAssessment,
  changes: readonly Candidate[],
  options: RemedyOptions,
): Trial {
  const forbiddenBy = [
    ...changes.flatMap((change) => change.forbiddenBy),
    ...findForbiddenNeeds(basis, assessment, options.unavailableMaterialIds ?? []),
    ...findFailingNewBends(basis, assessment),
  ]
  let moved: readonly MovedItem[] | null = null
  let broken: number | null = null
  const findMoved = () => {
    moved ??= findMovedItems(basis, assessment, forbiddenBy, options)
    return moved
  }
  return {
    id: changes.map(({ id }) => id).join('+'),
    changes,
    changeCount: changes.length,
    edited: assessment.design,
    after: assessment.state,
    forbiddenBy,
    findMoved,
    countBreaks: () => {
      broken ??= moved?.filter(isBreak).length ?? countBreaks(basis, assessment, forbiddenBy, options)
      return broken
    },
    // Without a plan nothing is drawn or folded.
    judged: 'folded',
    worsens: basis.state.otherBends.flatMap(({ bendId, name, verdict }, at) => {
      const after = assessment.state.otherBends[at]?.verdict ?? verdict
      return isWorseVerdict(verdict, after) ? [{ bendId, name, before: verdict, after }] : []
    }),
  }
}

/** Leaves that the set parts are given the lengths that the bends then need. */
function assessFitted(
  { result: { bendId, zoneId } }: BendAssessment,
  previous: BendAssessment,
  changes: readonly Candidate[],
  edited: Design,
  options: RemedyOptions,
): BendAssessment | null {
  const assessment = assessBend(edited, bendId, toAssessOptions(options), previous)
  if (assessment === null || !changes.some(({ family }) => family === 'unbonded-leaves')) return assessment
  const fitted = fitLeafSteps(assessment, zoneId)
  return fitted === edited ? assessment : assessBend(fitted, bendId, toAssessOptions(options), assessment)
}

/** A bend that a change adds has to meet too. */
function findFailingNewBends(basis: BendAssessment, { state }: BendAssessment): ForbiddenNeed[] {
  return state.otherBends
    .slice(basis.state.otherBends.length)
    .flatMap(({ name, verdict, because }) =>
      isWorseVerdict('meets', verdict) ? [{ kind: 'other-bend' as const, name, because }] : [],
    )
}

export function makeSubject(assessment: BendAssessment, options: RemedyOptions): Subject | null {
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

export function toAssessOptions({ limits = [], testedLives = [], facts = {} }: RemedyOptions): AssessOptions {
  return { limits, testedLives, facts }
}
