import type { Bend } from '../../../design'
import type { BendResult, Limit } from '../../../results'
import { inSentence } from '../../../units'
import { listBends, notComputedSection } from '../../checks'
import { computeMargin, decide, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { withinModel } from '../../model-reach'
import { WIDER_TOLERANCES } from '../../monotone'

export const leafLength = defineItem({
  id: 'leaf-length',
  section: 'geometry',
  severity: 'major',
  question: 'Do unbonded leaves have the lengths that their bends require?',
  titles: { meets: 'Leaves can share one length', fails: 'Leaves need stepped lengths' },
  appliesTo: { needs: ['bends'], says: 'bends with unbonded leaves' },
  limits: ['leafLengthDifferenceMm'],
  sourceKeys: ['exactArithmetic', 'lengthRuleOfThumb'],
  restsOn: [...SECTION_INPUTS, 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'bends[].angleDeg', worse: 'larger' }, ...WIDER_TOLERANCES],
  check: (context) => {
    const limit = context.getLimit('leafLengthDifferenceMm')
    return listBends(context).map(({ bend, result, index, place }) => {
      const unknown = notComputedSection({ bend, result, index, place })
      if (unknown !== null) return unknown
      if (result.leaves.length < 2) return notApplicable(`bend ${bend.name} has one leaf`, [place])
      const decided = decide({
        value: result.leafLengthDifferenceMm,
        range: result.leafLengthRangeMm,
        rangeOver: 'both',
        limit,
        places: [place],
        what: `length difference of leaves in bend ${bend.name}`,
        equation: 'pitch of leaves x angle',
        sourceKey: 'exactArithmetic',
        remark: `${result.leaves.length} leaves; developed lengths ${result.leaves.map((leaf) => inSentence(leaf.developedLengthMm)).join(', ')} mm from the inside out.`,
      })
      return holdsWhereverAxesLie(bend, result, limit) ? decided : withinModel(result, decided, () => null)
    })
  },
})

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
