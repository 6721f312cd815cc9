import type { Design } from '../design'
import { inSentence } from '../units'
import type { BendAssessment } from './assess'

/** Steps are stated to whole micrometres. */
const STEPS_PER_MM = 1000

/**
 * The design with its stepped leaves in a zone made as long as their bends need: a set of changes is complete only with the lengths of the
 * leaves that it parts, and a further change moves what they need.
 *
 * @returns the very same design where each step is right already
 */
export function fitLeafSteps({ design, assembly }: BendAssessment, zoneId: string): Design {
  let isMoved = false
  const bends = design.bends.map((bend, at) => {
    const result = assembly.bends[at]
    if (bend.zoneId !== zoneId || bend.leafLengths !== 'stepped' || result === undefined || result.leaves.length < 2) {
      return bend
    }
    const leafStepMm = Math.round(result.leafLengthDifferenceMm * STEPS_PER_MM) / STEPS_PER_MM
    if (leafStepMm === bend.leafStepMm) return bend
    isMoved = true
    return { ...bend, leafStepMm }
  })
  return isMoved ? { ...design, bends } : design
}

/** `outermost leaf longer by 0.212 mm in Hinge`, for each bend of a zone with stepped leaves. */
export function describeLeafSteps({ bends }: Design, zoneId: string): string {
  return bends
    .flatMap(({ zoneId: own, leafLengths, leafStepMm, name }) =>
      own === zoneId && leafLengths === 'stepped' && leafStepMm !== null
        ? [`outermost leaf longer than the innermost by ${inSentence(leafStepMm, 'mm')} in ${name}`]
        : [],
    )
    .join(', ')
}
