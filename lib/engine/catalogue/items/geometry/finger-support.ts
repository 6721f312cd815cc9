import { callByName } from '../../../design'
import type { Outcome, ZoneLayerResult, ZoneResult } from '../../../results'
import { placeOf } from '../../checks'
import { decide, makeNoneAllowed, makeSourceLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { hasCopper } from '../../needs'

export const fingerSupport = defineItem({
  id: 'finger-support',
  section: 'geometry',
  severity: 'major',
  question: 'Does every finger end have exposed contacts on one face and a stiffener on the other?',
  titles: {
    meets: 'Finger ends are stiffened, their contacts open',
    fails: 'A finger end is not stiffened, or not open',
  },
  appliesTo: { needs: ['finger-zones'], says: 'designs with a finger zone' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['construction.layers', 'construction.zones'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) =>
    context.zones.flatMap((zone, index): Outcome[] => {
      if (zone.kind !== 'finger') return []
      const places = [placeOf('zone', { id: zone.zoneId, name: zone.name })]
      if (zone.layers.length === 0) {
        return [
          notComputed(
            ['construction', 'zones', index, 'presence'],
            `layers of ${callByName('zone', zone.name)}`,
            places,
          ),
        ]
      }
      const stiffeners = zone.layers.filter(({ kind }) => kind === 'stiffener')
      return [
        decide({
          value: stiffeners.length,
          limit: makeSourceLimit({
            key: 'fingerStiffenersCount',
            value: 1,
            unit: 'count',
            sense: 'at-least',
            sourceKey: 'commonPractice',
          }),
          places,
          what: `stiffeners in ${zone.name}`,
          equation: 'count of layers',
        }),
        decide({
          value: findOpenFaces(zone).length > 0 ? 0 : 1,
          limit: makeNoneAllowed('coveredContactEndsCount', 'commonPractice'),
          places,
          what: `finger ends without an open face at ${zone.name}`,
          equation: 'order of the layers',
          remark:
            findOpenFaces(zone).length > 0
              ? undefined
              : 'Film, mask or stiffener lies on the copper of both faces: the connector touches nothing.',
        }),
      ]
    }),
})

/** Faces at which copper is the outermost layer. */
function findOpenFaces({ layers }: ZoneResult): ZoneLayerResult[] {
  return [layers[0], layers.at(-1)].flatMap((layer) => (layer !== undefined && hasCopper(layer) ? [layer] : []))
}
