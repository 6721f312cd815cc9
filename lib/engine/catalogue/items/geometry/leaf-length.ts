import { listBends } from '../../checks'
import { decide, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { formatValue } from '../../format-value'
import { WIDER_TOLERANCES } from '../../monotone'

export const leafLength = defineItem({
  id: 'leaf-length',
  section: 'geometry',
  severity: 'major',
  question: 'Do unbonded leaves have the lengths that their bends ask for?',
  titles: { meets: 'Leaves can share one length', fails: 'Leaves need stepped lengths' },
  appliesTo: { needs: ['bends'], says: 'bends with unbonded leaves' },
  limits: ['leafLengthDifferenceMm'],
  sourceKeys: ['exactArithmetic', 'lengthRuleOfThumb'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'bends[].angleDeg', worse: 'larger' }, ...WIDER_TOLERANCES],
  check: (context) => {
    const limit = context.getLimit('leafLengthDifferenceMm')
    return listBends(context).map(({ bend, result, place }) =>
      result.leaves.length < 2
        ? notApplicable(`bend ${bend.name} has one leaf`, [place])
        : decide({
            value: result.leafLengthDifferenceMm,
            range: result.leafLengthRangeMm,
            limit,
            places: [place],
            what: `length difference of leaves in bend ${bend.name}`,
            equation: 'pitch of leaves x angle',
            sourceKey: 'exactArithmetic',
            remark: `${result.leaves.length} leaves; developed lengths ${result.leaves.map((leaf) => formatValue(leaf.developedLengthMm)).join(', ')} mm from the inside out.`,
          }),
    )
  },
})
