import 'server-only'
import { isDeepStrictEqual } from 'node:util'
import { countBendLayersOf, type Design, type Evaluation, evaluate, freezeDeep } from '@/lib/engine'
import { findSubstitutes, type SubstituteSearch } from '@/lib/fabrication'
import { type EvaluationOrder, JobLimitError, runJob, type SubstituteOrder } from '@/lib/jobs'
import { hashJson } from '@/lib/review'
import { Computed } from '../store/computations'
import { refuseInvalid } from '../store/errors'
import type { TemplateRecord } from './template-record'

/**
 * Up to this size a design is evaluated where it is needed, within the transaction: about a tenth of a second. Ordinary parts are below
 * (ten bends of twelve layers). Our choice, as is the length, which stands for everything else that a design holds.
 */
const MOST_BEND_LAYERS_HERE = 120
const MOST_CHARACTERS_HERE = 150_000

/** A transaction that is done once more finds its results here; a few large designs are worked on at a time. */
const evaluations = new Computed<Evaluation>(12)

/**
 * Evaluates a design. A large one is evaluated off the request path, within the limits of the job "evaluation": the most that the
 * server spends on one.
 *
 * @throws ComputationNeededError  for `computing`, which every transaction runs in
 */
export function evaluateBounded(
  order: Omit<EvaluationOrder, 'template'>,
  { catalogue, content }: Pick<TemplateRecord, 'catalogue' | 'content'>,
): Evaluation {
  const { design } = order
  if (isSmallDesign(design)) return evaluateOnce(order, catalogue)
  const apart = { ...order, template: content }
  return evaluations.get(hashJson(apart), () => withinLimits(design, () => runJob('evaluation', apart)))
}

type Asked = Omit<EvaluationOrder, 'template'>

interface Kept {
  readonly asked: Asked
  readonly catalogue: TemplateRecord['catalogue']
  readonly evaluation: Evaluation
}

/** What was asked of a design lately. A stored design is read once, so the next request asks of the same one. */
const kept = new WeakMap<Design, readonly Kept[]>()
/** The views of one revision: the team's, and each fabricator's. */
const MOST_KEPT = 4

function evaluateOnce(asked: Asked, catalogue: TemplateRecord['catalogue']): Evaluation {
  const { design, limits, facts, testedLives } = asked
  const before = kept.get(design) ?? []
  const known = before.find((each) => each.catalogue === catalogue && isSameAsked(each.asked, asked))
  if (known !== undefined) return known.evaluation
  const evaluation = freezeDeep(evaluate(design, { items: catalogue.items, limits, facts, testedLives }))
  kept.set(design, [{ asked, catalogue, evaluation }, ...before].slice(0, MOST_KEPT))
  return evaluation
}

/** Facts of files are large, and read once: the same files are the same object. */
function isSameAsked(one: Asked, other: Asked): boolean {
  return (
    one.facts?.artwork === other.facts?.artwork &&
    one.facts?.onPlan === other.facts?.onPlan &&
    isDeepStrictEqual(
      [one.limits, { ...one.facts, artwork: null, onPlan: null }, one.testedLives],
      [other.limits, { ...other.facts, artwork: null, onPlan: null }, other.testedLives],
    )
  )
}

const searches = new Computed<SubstituteSearch>(48)

/** Looks for what could take a material's place; on a large design off the request path, where each trial is an evaluation. */
export function findSubstitutesBounded(
  order: SubstituteOrder,
  template: Pick<TemplateRecord, 'catalogue' | 'content'>,
): SubstituteSearch {
  const { design, purchase, shelf, matrix, limits, facts, testedLives } = order
  if (!isSmallDesign(design)) {
    return searches.get(hashJson(order), () => withinLimits(design, () => runJob('substitutes', order)))
  }
  const evaluateDesign = (trial: Design) => evaluateBounded({ design: trial, limits, facts, testedLives }, template)
  const evaluation = evaluateDesign(design)
  return findSubstitutes(design, purchase, shelf, {
    evaluation,
    evaluateDesign,
    ...(matrix === null ? {} : { matrix }),
  })
}

function isSmallDesign(design: Design): boolean {
  return countBendLayersOf(design) <= MOST_BEND_LAYERS_HERE && JSON.stringify(design).length <= MOST_CHARACTERS_HERE
}

/** What exceeds its limits is refused, with the reason and the bound. */
async function withinLimits<T>(design: Design, compute: () => Promise<T>): Promise<T> {
  try {
    return await compute()
  } catch (error) {
    if (!(error instanceof JobLimitError)) throw error
    const size = `${design.bends.length} bends through ${Math.round(countBendLayersOf(design))} layers in all`
    const message = `This design cannot be evaluated here: ${size}. ${error.message} Nothing was changed.`
    return refuseInvalid([{ code: 'too-costly', path: ['bends'], message }], message)
  }
}
