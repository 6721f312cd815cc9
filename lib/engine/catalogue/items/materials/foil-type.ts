import { callByName } from '../../../design'
import type { Outcome } from '../../../results'
import { isDynamic, listBends, notComputedLayers, notComputedUse, placeOf } from '../../checks'
import { decide, makeSourceLimit, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { listConductorLayers } from '../../needs'

export const foilType = defineItem({
  id: 'foil-type',
  section: 'materials',
  severity: 'major',
  question: 'Is the foil in each bend of a type that suits its use?',
  titles: { meets: 'Foil suits the use of each bend', fails: 'Electrodeposited foil in a bend that flexes' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'designs with a bend and a conductor layer' },
  limits: [],
  sourceKeys: ['foilRoundRobin'],
  restsOn: ['construction.layers.*.materialId', 'construction.zones', 'materials', 'bends.*.use', 'bends.*.zoneId'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) =>
    listBends(context).map((checked): Outcome => {
      const { bend, zone, place } = checked
      if (bend.use === null) return notComputedUse(checked)
      const unknown = notComputedLayers(checked)
      if (unknown !== null) return unknown
      if (bend.use === 'fold-once')
        return notApplicable(`${bend.name} is folded once, where the strain decides`, [place])
      const electrodeposited = listConductorLayers(zone).filter(
        (layer) =>
          layer.materialId !== null && context.findMaterial(layer.materialId)?.foil?.type === 'electrodeposited',
      )
      return decide({
        value: electrodeposited.length,
        limit: makeSourceLimit({
          key: 'electrodepositedLayersCount',
          value: 0,
          unit: 'count',
          sense: 'at-most',
          sourceKey: 'foilRoundRobin',
        }),
        places: [place, ...electrodeposited.map((layer) => placeOf('layer', { id: layer.layerId, name: layer.name }))],
        what: `electrodeposited layers in ${callByName('bend', bend.name)}`,
        equation: 'count of layers',
        cautions: isDynamic(bend)
          ? []
          : ['No published allowable strain was found for electrodeposited foil flexed to install.'],
      })
    }),
})
