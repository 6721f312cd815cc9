import type { Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { decide, makeDesignLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const fingerThickness = defineItem({
  id: 'finger-thickness',
  section: 'materials',
  severity: 'blocking',
  question: "Does each finger end fit its connector's thickness window over all tolerances?",
  why: 'Too thin and the contacts lift; too thick and the latch will not close or breaks. The window is about a tenth of the thickness, so tolerances decide.',
  howToCheck:
    'Take the window from the connector drawing and compare with the finished thickness at both ends of its worst case.',
  titles: { meets: 'Finger ends fit their connectors', fails: 'A finger end misses its connector window' },
  appliesTo: { needs: ['finger-zones'], says: 'designs with a finger zone' },
  limits: [],
  sourceKeys: ['exactArithmetic'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
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
      outcomes.push(
        decide({
          value: result.thicknessUm,
          range: result.worstCaseUm,
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
          what: `thickness of ${zone.name}`,
          equation: 'sum of finished layers, worst case',
        }),
      )
    })
    return outcomes
  },
})
