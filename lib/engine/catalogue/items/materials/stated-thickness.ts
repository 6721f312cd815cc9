import type { EvaluationContext } from '../../../context'
import type { Limit, Outcome } from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { computeMargin, decide, makeDesignLimit, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'

export const statedThickness = defineItem({
  id: 'stated-thickness',
  section: 'materials',
  severity: 'major',
  question: 'Does each stated thickness agree with the sum of its layers?',
  titles: {
    meets: 'Stated thicknesses agree with their layers',
    fails: 'A stated thickness is not the sum of its layers',
  },
  appliesTo: { needs: ['stated-thickness'], says: 'zones for which somebody states a thickness' },
  limits: ['statedThicknessDifferenceUm', 'statedThicknessDifferencePct'],
  sourceKeys: [],
  restsOn: [...SECTION_INPUTS, 'brief.surfaceFinish'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) => {
    const outcomes: Outcome[] = []
    for (const zone of context.design.construction.zones) {
      const result = context.findZoneResult(zone.id)
      if (zone.statedThicknessUm === null || result === null) continue
      // A connector end is measured where its contacts are.
      const { thicknessUm } = result.contact ?? result
      if (result.contact !== null && result.contact.missing.length > 0) {
        outcomes.push(notComputedFrom(result.contact.missing, [placeOf('zone', zone)]))
        continue
      }
      outcomes.push(
        decide({
          ...compare(context, zone.statedThicknessUm, zone.statedToleranceUm, thicknessUm),
          places: [placeOf('zone', zone)],
          what: `difference of the stated thickness in ${zone.name}`,
          equation: '|stated - sum of finished layers|',
          remark: `${inSentence(zone.statedThicknessUm, 'um')} is stated, the layers add up to ${inSentence(thicknessUm, 'um')}.`,
        }),
      )
    }
    return outcomes
  },
})

/**
 * The difference against what it may be: what rounding explains, or the tolerance on the drawing, or a share of the thickness where no tolerance is typed;
 * the kindest, since a figure that is rounded agrees as well as one with its tolerance.
 */
function compare(
  { getLimit }: EvaluationContext,
  statedUm: number,
  toleranceUm: number | null,
  thicknessUm: number,
): { readonly value: number; readonly limit: Limit } {
  const value = Math.abs(statedUm - thicknessUm)
  const inForce = getLimit('statedThicknessDifferenceUm')
  const rounding = makeDesignLimit({
    key: 'roundingOfStatedThicknessUm',
    value: halfLastDigit(statedUm),
    unit: 'um',
    sense: 'at-most',
    sourceKey: 'exactArithmetic',
    name: 'half the last digit typed',
  })
  for (const limit of [inForce, rounding]) if (computeMargin(value, limit) >= 0) return { value, limit }
  if (toleranceUm === null) return { value: (value / statedUm) * 100, limit: getLimit('statedThicknessDifferencePct') }
  const limit = makeDesignLimit({
    key: 'statedThicknessToleranceUm',
    value: toleranceUm,
    unit: 'um',
    sense: 'at-most',
    sourceKey: 'exactArithmetic',
    name: 'tolerance on the drawing',
  })
  return { value, limit }
}

/** Of a number as it was typed: 126.5 gives 0.05, 130 gives 0.5. */
function halfLastDigit(value: number): number {
  const [, decimals = ''] = String(value).split('.')
  return 0.5 * 10 ** -decimals.length
}
