import type { Design, Zone } from '../../../design'
import type { Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { decide, makeDesignLimit, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { WIDER_TOLERANCES } from '../../monotone'
import { explainFinish } from '../../process-figures'

export const fingerThickness = defineItem({
  id: 'finger-thickness',
  section: 'materials',
  severity: 'blocking',
  question: "Does each finger end fit its connector's thickness window over all tolerances?",
  titles: { meets: 'Finger ends fit their connectors', fails: 'A finger end misses its connector window' },
  appliesTo: { needs: ['finger-zones'], says: 'designs with a finger zone' },
  limits: [],
  sourceKeys: ['exactArithmetic'],
  restsOn: [...SECTION_INPUTS, 'brief.surfaceFinish'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: WIDER_TOLERANCES,
  check: (context) => {
    const outcomes: Outcome[] = []
    context.design.construction.zones.forEach((zone, index) => {
      if (zone.kind !== 'finger') return
      const places = [placeOf('zone', zone)]
      const result = context.findZoneResult(zone.id)
      if (zone.connectorWindow === null || result === null) {
        outcomes.push(
          notComputed(['construction', 'zones', index, 'connectorWindow'], `connector window of ${zone.name}`, places),
        )
        return
      }
      const contact = result.contact ?? { ...result, missing: [] }
      if (contact.missing.length > 0) {
        outcomes.push(notComputedFrom(contact.missing, places))
        return
      }
      outcomes.push(
        decide({
          value: contact.thicknessUm,
          range: contact.worstCaseUm,
          limit: makeDesignLimit({
            key: 'connectorWindowUm',
            value: zone.connectorWindow.minUm,
            upperValue: zone.connectorWindow.maxUm,
            unit: 'um',
            sense: 'within',
            sourceKey: 'exactArithmetic',
            name: 'connector window',
          }),
          places,
          what: `thickness of ${zone.name} over its contacts`,
          equation: 'sum of finished layers, plating and finish of the contacts, worst case',
          cautions: listFinishCautions(context.design.brief.surfaceFinish, zone),
        }),
      )
    })
    return outcomes
  },
})

function listFinishCautions(finish: Design['brief']['surfaceFinish'], { contactFinish }: Zone): string[] {
  const explained = contactFinish === null ? null : explainFinish(finish, contactFinish)
  return explained === null ? [] : [explained]
}
