import { type Bend, callByName } from '../../../design'
import type { BendResult, Limit, Outcome, Place, QuantityRange } from '../../../results'
import { inSentence } from '../../../units'
import { listBends, notComputedSection } from '../../checks'
import { cannotTell, computeMargin, decide, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { withinModel, withoutLeafLimits } from '../../model-reach'
import { WIDER_TOLERANCES } from '../../monotone'

export const leafLength = defineItem({
  id: 'leaf-length',
  section: 'geometry',
  severity: 'major',
  question: 'Do unbonded leaves have the lengths that their bends require?',
  titles: { meets: 'Leaves have the lengths that they need', fails: 'Leaves do not have the lengths that they need' },
  appliesTo: { needs: ['bends'], says: 'bends with unbonded leaves' },
  limits: ['leafLengthDifferenceMm'],
  sourceKeys: ['exactArithmetic', 'lengthRuleOfThumb'],
  restsOn: [...SECTION_INPUTS, 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [...WIDER_TOLERANCES],
  check: (context) => {
    const limit = context.getLimit('leafLengthDifferenceMm')
    return listBends(context).map(({ bend, result, index, place }) => {
      const unknown = notComputedSection({ bend, result, index, place })
      if (unknown !== null) return unknown
      if (result.leaves.length < 2) return notApplicable(`${callByName('bend', bend.name)} has one leaf`, [place])
      const lengths = readLengths(bend, result, index, place, limit)
      if ('outcome' in lengths) return lengths.outcome
      const decided = decide({
        value: lengths.valueMm,
        range: lengths.rangeMm,
        rangeOver: 'both',
        limit,
        places: [place],
        what: `${bend.leafLengths === 'stepped' ? 'step of the leaves off what is needed' : 'length difference of leaves'} in ${callByName('bend', bend.name)}`,
        equation: 'pitch of leaves x angle, less the step of their lengths',
        sourceKey: 'exactArithmetic',
        remark: `${result.leaves.length} leaves; developed lengths ${result.leaves.map((leaf) => inSentence(leaf.developedLengthMm)).join(', ')} mm from the inside out.`,
      })
      if (bend.leafLengths === 'stepped') return withinModel(withoutLeafLimits(result), decided, () => null)
      return holdsWhereverAxesLie(bend, result, limit)
        ? decided
        : withinModel(withoutLeafLimits(result), decided, () => null)
    })
  },
})

/**
 * By how much the lengths are off what the bend needs: all of it where leaves are equal, what is left where they are stepped. With nothing stated a
 * difference within the limit needs no step.
 */
function readLengths(
  bend: Bend,
  result: BendResult,
  index: number,
  place: Place,
  limit: Limit,
): { readonly outcome: Outcome } | { readonly valueMm: number; readonly rangeMm: QuantityRange } {
  const { leafLengthDifferenceMm: neededMm, leafLengthRangeMm: range } = result
  const equal = { valueMm: neededMm, rangeMm: range }
  const needed = `${inSentence(neededMm, 'mm')} of difference`
  if (bend.leafLengths === null) {
    return computeMargin(range.high, limit) >= 0
      ? equal
      : {
          outcome: notComputed(
            ['bends', index, 'leafLengths'],
            `lengths of the leaves of ${callByName('bend', bend.name)}`,
            [place],
            'typed',
          ),
        }
  }
  if (bend.leafLengths === 'equal-free-to-buckle') {
    if (bend.use === 'fold-once' || bend.use === 'flex-to-install') {
      return {
        outcome: {
          kind: 'said',
          verdict: 'meets',
          rests: 'typed',
          sourceKey: 'commonPractice',
          places: [place],
          summary: `The leaves of ${bend.name} are equal, and the inner ones have room to buckle: ${needed} goes into the loop. How tight they buckle is not computed.`,
        },
      }
    }
    return {
      outcome: cannotTell(
        `the leaves of ${callByName('bend', bend.name)}`,
        {
          because: 'a leaf that buckles in motion has a radius that is not computed',
          decidedBy: 'step the leaves, or test them',
        },
        [place],
      ),
    }
  }
  if (bend.leafLengths === 'equal') return equal
  const { leafStepMm } = bend
  if (leafStepMm === null) {
    return {
      outcome: notComputed(
        ['bends', index, 'leafStepMm'],
        `step of the leaves of ${callByName('bend', bend.name)}`,
        [place],
        'typed',
      ),
    }
  }
  const ends = [Math.abs(leafStepMm - range.low), Math.abs(leafStepMm - range.high)]
  const isInside = leafStepMm >= range.low && leafStepMm <= range.high
  return {
    valueMm: Math.abs(leafStepMm - neededMm),
    rangeMm: { low: isInside ? 0 : Math.min(...ends), high: Math.max(...ends) },
  }
}

/** An axis lies somewhere in its leaf: from that alone a difference may be too much, or little enough. */
function holdsWhereverAxesLie(
  { angleDeg }: Bend,
  { leaves, leafLengthRangeMm: range }: BendResult,
  limit: Limit,
): boolean {
  const [inner, outer] = [leaves[0], leaves.at(-1)]
  if (inner === undefined || outer === undefined) return false
  const lengthMm = (pitchUm: number) => (pitchUm / 1000) * ((angleDeg * Math.PI) / 180)
  const leastMm = lengthMm(outer.innerDepthUm - inner.innerDepthUm - inner.thicknessUm)
  const greatestMm = lengthMm(outer.innerDepthUm + outer.thicknessUm - inner.innerDepthUm)
  // Tolerances widen it by as much as they do the computed difference.
  const spreadMm = range.high - range.low
  return computeMargin(leastMm, limit) < 0 || computeMargin(greatestMm + spreadMm, limit) >= 0
}
