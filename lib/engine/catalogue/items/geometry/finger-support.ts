import { placeOf } from '../../checks'
import { decide, makeSourceLimit } from '../../decide'
import { defineItem } from '../../define-item'

export const fingerSupport = defineItem({
  id: 'finger-support',
  section: 'geometry',
  severity: 'major',
  question: 'Does every finger end have a stiffener?',
  titles: { meets: 'Finger ends are stiffened', fails: 'A finger end has no stiffener' },
  appliesTo: { needs: ['finger-zones'], says: 'designs with a finger zone' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['construction.layers', 'construction.zones'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) =>
    context.zones
      .filter((zone) => zone.kind === 'finger')
      .map((zone) => {
        const stiffeners = zone.layers.filter((layer) => layer.kind === 'stiffener')
        return decide({
          value: stiffeners.length,
          limit: makeSourceLimit({
            key: 'fingerStiffenersCount',
            value: 1,
            unit: 'count',
            sense: 'at-least',
            sourceKey: 'commonPractice',
          }),
          places: [placeOf('zone', { id: zone.zoneId, name: zone.name })],
          what: `stiffeners in ${zone.name}`,
          equation: 'count of layers',
        })
      }),
})
