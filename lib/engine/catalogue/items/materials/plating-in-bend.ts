import type { EvaluationContext } from '../../../context'
import { callByName } from '../../../design'
import type { Outcome, QuantityRange, ZoneResult } from '../../../results'
import { listBends, notComputedLayers, placeOf } from '../../checks'
import { decide } from '../../decide'
import { defineItem } from '../../define-item'
import { listConductorLayers } from '../../needs'

export const platingInBend = defineItem({
  id: 'plating-in-bend',
  section: 'materials',
  severity: 'major',
  question: 'Is plated copper kept out of the bends?',
  titles: { meets: 'No plated copper in any bend', fails: 'Plated copper runs through a bend' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'designs with a bend and a conductor layer' },
  limits: ['platingInBendUm'],
  sourceKeys: [],
  restsOn: ['construction.layers.*.plating', 'construction.zones', 'bends.*.zoneId'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'construction.layers[].plating.thicknessUm', worse: 'larger' },
    { path: 'construction.layers[].plating.toleranceUm', worse: 'larger' },
  ],
  check: (context) => {
    const limit = context.getLimit('platingInBendUm')
    return listBends(context).flatMap((checked): Outcome | Outcome[] => {
      const { bend, zone, place } = checked
      const unknown = notComputedLayers(checked)
      if (unknown !== null) return unknown
      return listConductorLayers(zone).map((layer) =>
        decide({
          value: layer.copper?.platingUm ?? 0,
          range: getPlatingRange(context, layer),
          limit,
          places: [place, placeOf('layer', { id: layer.layerId, name: layer.name })],
          what: `plating on ${layer.name} in ${callByName('bend', bend.name)}`,
          equation: 'plating by process and zone',
        }),
      )
    })
  },
})

function getPlatingRange(
  context: EvaluationContext,
  { layerId, copper }: ZoneResult['layers'][number],
): QuantityRange | undefined {
  const layer = context.layersById.get(layerId)
  const platingUm = copper?.platingUm ?? 0
  if (layer?.kind !== 'conductor' || platingUm === 0) return undefined
  const { toleranceUm } = layer.plating
  return { low: Math.max(0, platingUm - toleranceUm), high: platingUm + toleranceUm }
}
