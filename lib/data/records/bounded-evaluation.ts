import 'server-only'
import { countBendLayersOf, type Design, type Evaluation, evaluate } from '@/lib/engine'
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
  const { design, limits, facts, testedLives } = order
  if (isSmallDesign(design)) return evaluate(design, { items: catalogue.items, limits, facts, testedLives })
  const apart = { ...order, template: content }
  return evaluations.get(hashJson(apart), () => withinLimits(design, () => runJob('evaluation', apart)))
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
