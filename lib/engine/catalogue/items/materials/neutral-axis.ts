import type { Outcome } from '../../../results'
import { checkDynamicBends, placeOf } from '../../checks'
import { decide } from '../../decide'
import { defineItem } from '../../define-item'
import { formatValue } from '../../format-value'
import { WIDER_TOLERANCES } from '../../monotone'

export const neutralAxis = defineItem({
  id: 'neutral-axis',
  section: 'materials',
  severity: 'minor',
  question: 'Do conductors lie near the neutral axis in each dynamic bend?',
  titles: { meets: 'Conductors lie near the neutral axis', fails: 'A conductor lies well off the neutral axis' },
  appliesTo: { needs: ['dynamic-bends', 'conductor-layers'], says: 'designs with a dynamic bend' },
  limits: ['neutralAxisOffsetFraction'],
  sourceKeys: ['compositeBeam'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: WIDER_TOLERANCES,
  check: (context) => {
    const limit = context.getLimit('neutralAxisOffsetFraction')
    return checkDynamicBends(context, ({ bend, result, place }) => {
      const outcomes: Outcome[] = []
      for (const conductor of result.conductors) {
        const leaf = result.leaves.find((candidate) => candidate.leafIndex === conductor.leafIndex)
        if (leaf === undefined) continue
        const middleUm = (conductor.innerDepthUm + conductor.outerDepthUm) / 2
        const offsetUm = middleUm - leaf.neutralAxisDepthUm
        outcomes.push(
          decide({
            value: Math.abs(offsetUm) / leaf.thicknessUm,
            range: conductor.axisOffsetRangeFraction ?? undefined,
            limit,
            places: [place, placeOf('layer', { id: conductor.layerId, name: conductor.name })],
            what: `offset of ${conductor.name} from the neutral axis in ${bend.name}, share of thickness`,
            equation: 'y_n = sum(E_i t_i y_i) / sum(E_i t_i)',
            sourceKey: 'compositeBeam',
            remark: `It lies ${formatValue(Math.abs(offsetUm), 'um')} to the ${offsetUm < 0 ? 'inside' : 'outside'}.`,
          }),
        )
      }
      return outcomes
    })
  },
})
