import type { Outcome } from '../../../results'
import { inSentence } from '../../../units'
import { checkDynamicBends, placeOf } from '../../checks'
import { computeMargin, decide } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { withinModel, withoutLeafLimits } from '../../model-reach'
import { WIDER_TOLERANCES } from '../../monotone'

export const neutralAxis = defineItem({
  id: 'neutral-axis',
  section: 'materials',
  severity: 'minor',
  question: 'Do conductors lie near the neutral axis in each dynamic bend?',
  titles: { meets: 'Conductors lie near the neutral axis', fails: 'A conductor lies well off the neutral axis' },
  appliesTo: { needs: ['dynamic-bends', 'conductor-layers'], says: 'designs with a dynamic bend' },
  limits: ['neutralAxisOffsetFraction'],
  sourceKeys: ['compositeBeam', 'plasticBending'],
  restsOn: [...SECTION_INPUTS, 'bends'],
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
        const elasticUm = middleUm - leaf.neutralAxisDepthUm
        const yieldedUm = middleUm - leaf.decidingAxisDepthUm
        // Copper past yield moves the axis: what lies near only one of the two does not lie near the axis.
        const isYieldedFurther = Math.abs(yieldedUm) > Math.abs(elasticUm)
        const offsetUm = isYieldedFurther ? yieldedUm : elasticUm
        const moved = (Math.abs(offsetUm) - Math.abs(elasticUm)) / leaf.thicknessUm
        const range = conductor.axisOffsetRangeFraction
        const decided = decide({
          value: Math.abs(offsetUm) / leaf.thicknessUm,
          // How far yield moves the axis is taken from nominal.
          range: range === null ? undefined : { low: range.low + moved, high: range.high + moved },
          rangeOver: 'both',
          limit,
          places: [place, placeOf('layer', { id: conductor.layerId, name: conductor.name })],
          what: `offset of ${conductor.name} from the neutral axis in ${bend.name}, share of thickness`,
          equation: isYieldedFurther ? 'axis past yield, sum N = 0' : 'y_n = sum(E_i t_i y_i) / sum(E_i t_i)',
          sourceKey: isYieldedFurther ? 'plasticBending' : 'compositeBeam',
          remark: `It lies ${inSentence(Math.abs(offsetUm), 'um')} to the ${offsetUm < 0 ? 'inside' : 'outside'}${
            isYieldedFurther
              ? ` of the axis past yield, ${inSentence(Math.abs(elasticUm), 'um')} from it while nothing yields`
              : ''
          }.`,
        })
        // The elastic axis needs no radius: copper that is far from it is so in every bend.
        const isFarAnyway = computeMargin(Math.abs(elasticUm) / leaf.thicknessUm, limit) < 0
        outcomes.push(withinModel(withoutLeafLimits(result), decided, () => (isFarAnyway ? decided : null)))
      }
      return outcomes
    })
  },
})
