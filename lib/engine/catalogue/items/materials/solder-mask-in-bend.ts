import { listBends, notComputedLayers, placeOf } from '../../checks'
import { decide, makeNoneAllowed } from '../../decide'
import { defineItem } from '../../define-item'

export const solderMaskInBend = defineItem({
  id: 'solder-mask-in-bend',
  section: 'materials',
  severity: 'major',
  question: 'Is solder mask kept off the bends?',
  titles: { meets: 'No solder mask in any bend', fails: 'Solder mask covers a bend' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['construction.layers', 'construction.zones', 'bends.*.zoneId'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) =>
    listBends(context).map((checked) => {
      const { bend, zone, place } = checked
      const unknown = notComputedLayers(checked)
      if (unknown !== null) return unknown
      const masks = (zone?.layers ?? []).filter((layer) => layer.kind === 'solder-mask')
      return decide({
        value: masks.length,
        limit: makeNoneAllowed('solderMaskLayersInBendCount', 'commonPractice'),
        places: [place, ...masks.map((layer) => placeOf('layer', { id: layer.layerId, name: layer.name }))],
        what: `solder mask layers in bend ${bend.name}`,
        equation: 'count of layers',
      })
    }),
})
