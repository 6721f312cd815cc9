import type { Outcome } from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { decide, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'

export const statedThickness = defineItem({
  id: 'stated-thickness',
  section: 'materials',
  severity: 'minor',
  question: 'Does each stated thickness agree with the sum of its layers?',
  titles: {
    meets: 'Stated thicknesses agree with their layers',
    fails: 'A stated thickness is not the sum of its layers',
  },
  appliesTo: { needs: ['stated-thickness'], says: 'zones for which somebody states a thickness' },
  limits: ['statedThicknessDifferenceUm'],
  sourceKeys: [],
  restsOn: [...SECTION_INPUTS, 'brief.surfaceFinish'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) => {
    const limit = context.getLimit('statedThicknessDifferenceUm')
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
          value: Math.abs(zone.statedThicknessUm - thicknessUm),
          limit,
          places: [placeOf('zone', zone)],
          what: `difference in ${zone.name}`,
          equation: '|stated - sum of finished layers|',
          remark: `${inSentence(zone.statedThicknessUm, 'um')} is stated, the layers add up to ${inSentence(thicknessUm, 'um')}.`,
        }),
      )
    }
    return outcomes
  },
})
